package org.tallywright.cutting;

/** A sheet or an offcut of one; the grain runs along the length. */
public record SheetStock(long length, long width) {
    public SheetStock {
        if (length <= 0 || width <= 0) {
            throw new IllegalArgumentException("a sheet has a length and a width above 0");
        }
    }
}
