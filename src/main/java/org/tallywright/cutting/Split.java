package org.tallywright.cutting;

/** Which cut frees a part from the rectangle it lies in the corner of: along the sheet first, or across first. */
enum Split {
    RIP,
    CROSSCUT,
    SHORTER_LEFT,
    LONGER_LEFT,
    LARGEST_LEFT;

    boolean ripFirst(SheetNode node, long length, long width) {
        long besides = node.length - length;
        long above = node.width - width;
        return switch (this) {
            case RIP -> true;
            case CROSSCUT -> false;
            case SHORTER_LEFT -> besides < above;
            case LONGER_LEFT -> besides >= above;
            // The larger of the two rectangles that stay, one way or the other.
            case LARGEST_LEFT ->
                Math.max((double) node.length * above, (double) besides * width)
                        >= Math.max((double) node.width * besides, (double) length * above);
        };
    }
}
