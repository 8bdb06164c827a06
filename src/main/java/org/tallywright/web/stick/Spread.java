package org.tallywright.web.stick;

/** Places things in a row, in order, each as near to where it wants to be as the others allow. */
final class Spread {
    private Spread() {}

    /**
     * @param wanted where each would start, not falling
     * @param sizes how much room each takes, gaps included
     * @param room the whole room; if the sizes exceed it, the last ones stand outside
     * @return where each starts: none overlaps the next and, if all fit, none leaves the room
     */
    static double[] place(double[] wanted, double[] sizes, double room) {
        double[] placed = wanted.clone();
        double free = 0;
        for (int i = 0; i < placed.length; i++) {
            placed[i] = Math.max(free, placed[i]);
            free = placed[i] + sizes[i];
        }
        double limit = room;
        for (int i = placed.length - 1; i >= 0; i--) {
            placed[i] = Math.min(placed[i], limit - sizes[i]);
            limit = placed[i];
        }
        // Squeezed beyond the start, the row keeps its order and runs out at its end instead.
        free = 0;
        for (int i = 0; i < placed.length; i++) {
            placed[i] = Math.max(free, placed[i]);
            free = placed[i] + sizes[i];
        }
        return placed;
    }

    static double sum(double[] sizes) {
        double all = 0;
        for (double size : sizes) {
            all += size;
        }
        return all;
    }
}
