package org.tallywright.measuring;

import java.util.Locale;

/** How the rings stand across the width of a board. */
public enum Cut {
    /** Flat sawn: the width moves as the rings run, most. */
    FLAT,
    /** Quartered: the width moves across the rings, least. */
    QUARTERED,
    /** Rift or mixed boards: reckoned as flat sawn, which is the larger. */
    MIXED;

    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    boolean isTangential() {
        return this != QUARTERED;
    }
}
