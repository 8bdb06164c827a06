package org.tallywright.web;

import java.util.Locale;

/** A short state in words; the colour and hatch of its sort only repeat them. */
public record Tag(Sort sort, String text) {

    /** Waiting, over what was bid, good, over and done with, under way, or none of these. */
    public enum Sort {
        WAIT,
        OVER,
        GOOD,
        DONE,
        NOW,
        PLAIN
    }

    /** The style class. */
    public String kind() {
        return sort.name().toLowerCase(Locale.ROOT);
    }
}
