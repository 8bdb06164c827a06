package org.tallywright.measuring;

/** The plane geometry of an opening: lengths in inches (or any one unit), angles in degrees. */
final class Geometry {
    private Geometry() {}

    /** A corner from its two sides and the distance across: the law of cosines. */
    static double corner(double back, double side, double across) {
        return Math.toDegrees(Math.acos((back * back + side * side - across * across) / (2 * back * side)));
    }

    /** Whether three lengths make a triangle that is no line. */
    static boolean isCorner(double back, double side, double across) {
        return across < back + side && across > Math.abs(back - side);
    }

    /** The corner at the back of a wall that runs out by {@code splay} over {@code depth}; 90 is square. */
    static double cornerOf(double splay, double depth) {
        return 90 + Math.toDegrees(Math.atan(splay / depth));
    }

    /** How far a wall at that corner runs out over {@code depth}. */
    static double splayOf(double corner, double depth) {
        return depth * Math.tan(Math.toRadians(corner - 90));
    }

    /**
     * How far the front line is shifted to the right of the middle of the back line, from the two diagonals; nothing
     * where they are equal. {@code first} starts at the back left corner.
     */
    static double shift(double back, double front, double first, double second) {
        return (first * first - second * second) / (2 * (back + front));
    }

    /** How far the left wall runs out toward the front, from both widths and both diagonals. */
    static double leftSplay(double back, double front, double first, double second) {
        return (front - back) / 2 - shift(back, front, first, second);
    }

    /** As the left one. */
    static double rightSplay(double back, double front, double first, double second) {
        return (front - back) / 2 + shift(back, front, first, second);
    }

    /** The square of the distance between back and front line that the diagonals leave. */
    static double depthSquared(double back, double front, double first, double second) {
        double across = back + rightSplay(back, front, first, second);
        return first * first - across * across;
    }
}
