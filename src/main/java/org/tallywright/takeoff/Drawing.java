package org.tallywright.takeoff;

import java.util.List;

/**
 * One sheet or bar to take to the saw, in drawing units, and the same in words.
 *
 * @param copies how many are cut alike
 * @param facts kerf, trim and grain
 * @param cuts step by step
 * @param parts what comes out of it
 * @param left offcuts with their sizes
 * @param grain whether a part on it has one, which then runs from left to right
 */
public record Drawing(
        String title,
        int copies,
        long width,
        long height,
        List<Box> boxes,
        List<Saw> saws,
        List<String> facts,
        List<String> cuts,
        List<String> parts,
        List<String> left,
        boolean grain) {
    /** Room below for the arrow of the grain. */
    private static final long ARROW = 54;
    /** The line of the sheet itself. */
    private static final long EDGE = 3;

    /**
     * @param label the part's number, empty for what is left
     * @param size written where there is room
     */
    public record Box(long x, long y, long width, long height, String label, String size, boolean part) {
        /** Letters of a size are so large, on a wide screen and on paper. */
        private static final double SMALL = 17;

        public long middleX() {
            return x + width / 2;
        }

        /** Below the number; of what is left in the middle. */
        public long sizeY() {
            return part ? y + height / 2 + 24 : y + height / 2;
        }

        /** Whether the size has room without touching the number. */
        public boolean isRoomy() {
            return width > 0.58 * SMALL * size.length() + 8 && height > (part ? 76 : 24);
        }
    }

    /** A cut, or the line from a number to its part. */
    public record Saw(long x1, long y1, long x2, long y2) {}

    public Lettering wide() {
        return Letterer.WIDE.letter(boxes, width, height);
    }

    public Lettering narrow() {
        return Letterer.NARROW.letter(boxes, width, height);
    }

    /** The part of the plane to show: the sheet, the numbers beside it and the arrow below. */
    public String frame() {
        List<Lettering.Label> all = new java.util.ArrayList<>(wide().labels());
        all.addAll(narrow().labels());
        double left = EDGE;
        // As wide as any, so that letters are as large on each.
        double right = Math.max(EDGE, Drawings.ACROSS - width);
        double top = EDGE;
        for (Lettering.Label label : all) {
            left = Math.max(left, label.across() / 2 - label.x() + EDGE);
            right = Math.max(right, label.x() + label.across() / 2 - width + EDGE);
            top = Math.max(top, label.down() / 2 - label.y() + EDGE);
        }
        long x = Math.round(Math.ceil(left));
        long y = Math.round(Math.ceil(top));
        return "-" + x + " -" + y + " " + (x + width + Math.round(Math.ceil(right))) + " "
                + (y + height + (grain ? ARROW : EDGE));
    }

    public long arrowY() {
        return height + ARROW / 2 + 2;
    }

    Drawing numbered(String called, int alike) {
        return new Drawing(called, alike, width, height, boxes, saws, facts, cuts, parts, left, grain);
    }
}
