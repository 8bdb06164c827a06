package org.tallywright.measuring;

/** What was not read of an opening, so that a width to build to holds only where the walls are as they should be. */
public enum Unread {
    /** Nothing says whether it is square, not even a width at both ends. */
    FRONT_AND_BACK,
    /** Nothing says whether it is square. */
    DIAGONALS,
    LEAN_LEFT,
    LEAN_RIGHT
}
