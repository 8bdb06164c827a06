package org.tallywright.takeoff;

import java.util.List;

/**
 * The numbers written into a drawing for one width of the page, in drawing units.
 *
 * @param leaders lines from a number beside the drawing to its part
 * @param untold numbers for which there was no room at all, each with how many; the words name them
 */
public record Lettering(List<Label> labels, List<Drawing.Saw> leaders, List<String> untold) {
    /**
     * @param x its middle, as y
     * @param turned along an upright part, to be read from the right
     */
    public record Label(double x, double y, double size, boolean turned, String text) {
        /** For the drawing; nothing where it stands upright. */
        public String turn() {
            return turned ? "rotate(-90 " + x + " " + y + ")" : "";
        }

        /** Of the room it takes, as far as it can be told without the letters of the reader's machine. */
        public double across() {
            return turned ? high(size) : wide(text, size);
        }

        public double down() {
            return turned ? wide(text, size) : high(size);
        }
    }

    /** Bold figures are up to so much of their size wide. */
    static double wide(String text, double size) {
        return 0.64 * size * text.length();
    }

    /** Figures have nothing below the line. */
    static double high(double size) {
        return 0.8 * size;
    }
}
