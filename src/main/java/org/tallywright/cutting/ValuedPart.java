package org.tallywright.cutting;

/**
 * A part that one sheet may give several of.
 *
 * @param most how many of it are wanted; {@link BarStock#ANY} for any number
 * @param turnable may lie the other way too
 */
public record ValuedPart(long length, long width, int most, double value, boolean turnable) {
    public ValuedPart {
        if (length <= 0 || width <= 0 || most < 0) {
            throw new IllegalArgumentException("a part has a length and a width above 0");
        }
    }
}
