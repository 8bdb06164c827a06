package org.tallywright.cutting;

/** One part of solid wood, its length along the grain. */
public record BoardPart(long length, long width) {
    public BoardPart {
        if (length <= 0 || width <= 0) {
            throw new IllegalArgumentException("a part has a length and a width above 0");
        }
    }
}
