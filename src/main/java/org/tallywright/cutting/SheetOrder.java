package org.tallywright.cutting;

/** In which order parts are laid: the largest first by one of these. */
enum SheetOrder {
    AREA,
    LENGTH,
    WIDTH,
    LONGER,
    EDGE;

    double key(Block block) {
        return switch (this) {
            case AREA -> block.area();
            case LENGTH -> block.length() + 1e-3 * block.width();
            case WIDTH -> block.width() + 1e-3 * block.length();
            case LONGER -> Math.max(block.length(), block.width());
            case EDGE -> block.length() + block.width();
        };
    }
}
