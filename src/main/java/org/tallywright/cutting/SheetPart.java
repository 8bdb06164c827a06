package org.tallywright.cutting;

/**
 * One part of a sheet.
 *
 * @param match parts of the same number above 0 stay together on one sheet so that the figure runs on from one to the
 *     next: side by side where their lengths are alike, else end to end; in several rows where a sheet is too small for
 *     that, and on several sheets where it is too small for all
 */
public record SheetPart(long length, long width, Grain grain, int match) {
    public SheetPart {
        if (length <= 0 || width <= 0 || match < 0) {
            throw new IllegalArgumentException("a part has a length and a width above 0");
        }
    }
}
