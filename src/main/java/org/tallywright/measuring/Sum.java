package org.tallywright.measuring;

/** What is computed from the readings of an opening. */
public enum Sum {
    NARROWEST,
    CLEAR_WIDTH,
    SPLAY_FLOOR,
    SPLAY_MIDDLE,
    SPLAY_TOP,
    TAPER,
    LARGEST_GAP,
    SCRIBE_STOCK,
    ONE_WALL_ANGLE,
    EACH_WALL_ANGLE,
    CORNER_LEFT,
    CORNER_RIGHT,
    CORNER_CHECK,
    SQUARE_SHIFT,
    DIAGONAL_LEFT,
    DIAGONAL_RIGHT,
    DEPTH_CHECK,
    LOWEST,
    LEAN_LEFT,
    LEAN_RIGHT,
    BOW_BACK,
    SCRIBE_BACK,
    BOW_LEFT,
    SCRIBE_LEFT,
    BOW_RIGHT,
    SCRIBE_RIGHT,
    FALL,
    FALL_FRONT,
    LEVELLING;

    /** In degrees; all others are lengths in inches. */
    public boolean isAngle() {
        return switch (this) {
            case ONE_WALL_ANGLE, EACH_WALL_ANGLE, CORNER_LEFT, CORNER_RIGHT, DIAGONAL_LEFT, DIAGONAL_RIGHT -> true;
            default -> false;
        };
    }
}
