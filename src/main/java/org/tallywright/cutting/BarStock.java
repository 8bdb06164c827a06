package org.tallywright.cutting;

/**
 * A length that parts can be cut from.
 *
 * @param count how many there are; {@link #ANY} for what can be bought
 * @param owned lies in the shop and costs nothing
 */
public record BarStock(long length, int count, boolean owned) {
    public static final int ANY = Integer.MAX_VALUE;

    public BarStock {
        if (length <= 0 || count < 0) {
            throw new IllegalArgumentException("stock has a length above 0 and a count of 0 or more");
        }
    }

    public static BarStock bought(long length) {
        return new BarStock(length, ANY, false);
    }

    public static BarStock owned(long length, int count) {
        return new BarStock(length, count, true);
    }
}
