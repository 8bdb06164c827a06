package org.tallywright.cutting;

/** Which of the free rectangles a part goes into: the one with the least of this left over. */
enum Fit {
    AREA,
    SHORT_SIDE,
    LONG_SIDE;

    double left(SheetNode node, long length, long width) {
        return switch (this) {
            case AREA -> (double) node.length * node.width - (double) length * width;
            case SHORT_SIDE -> Math.min(node.length - length, node.width - width);
            case LONG_SIDE -> Math.max(node.length - length, node.width - width);
        };
    }
}
