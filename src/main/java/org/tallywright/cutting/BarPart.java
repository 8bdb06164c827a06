package org.tallywright.cutting;

/** So many parts of one length. Lengths throughout are whole numbers of whatever unit the caller uses. */
public record BarPart(long length, int count) {
    public BarPart {
        if (length <= 0 || count < 0) {
            throw new IllegalArgumentException("a part has a length above 0 and a count of 0 or more");
        }
    }
}
