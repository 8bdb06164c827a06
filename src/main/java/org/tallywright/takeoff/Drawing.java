package org.tallywright.takeoff;

import java.util.List;

/**
 * One sheet or bar to take to the saw, in drawing units, and the same in words.
 *
 * @param copies how many are cut alike
 * @param cuts step by step
 * @param parts what comes out of it
 * @param left offcuts with their sizes
 */
public record Drawing(
        String title,
        int copies,
        long width,
        long height,
        List<Box> boxes,
        List<Saw> saws,
        List<String> cuts,
        List<String> parts,
        List<String> left) {

    /**
     * @param label the part's number, empty for what is left
     * @param size written where there is room, else empty
     */
    public record Box(long x, long y, long width, long height, String label, String size, boolean part) {
        public long middleX() {
            return x + width / 2;
        }

        public long middleY() {
            return y + height / 2;
        }

        /** Short ones are written small. */
        public boolean isSmall() {
            return width < 60 || height < 40;
        }

        /** Room for nothing: the words beside the drawing name it. */
        public boolean isTiny() {
            return width < 16 || height < 16;
        }
    }

    /** A cut as a line. */
    public record Saw(long x1, long y1, long x2, long y2) {}

    Drawing times(int number) {
        return new Drawing(title, number, width, height, boxes, saws, cuts, parts, left);
    }
}
