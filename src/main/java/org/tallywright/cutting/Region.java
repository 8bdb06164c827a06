package org.tallywright.cutting;

/**
 * A rectangle of a sheet: what the saw has not reached, a part, or what is left. x runs along the length of the sheet.
 * Only {@link Cut} has something inside, and it is always cut from edge to edge: a guillotine cut by its shape.
 */
public sealed interface Region {
    long x();

    long y();

    /** Along the length of the sheet. */
    long length();

    /** Across it. */
    long width();

    /** @param part its place in the list asked for; {@code turned} where its own length lies across the sheet */
    record Part(long x, long y, long length, long width, int part, boolean turned) implements Region {}

    record Left(long x, long y, long length, long width) implements Region {}

    /**
     * One cut through the whole rectangle.
     *
     * @param rip along the length of the sheet; else across it
     * @param at where the kerf begins, from the edge of the sheet
     * @param first what lies before the kerf
     * @param second what lies behind it; null where the kerf takes all that is left
     */
    record Cut(
            long x,
            long y,
            long length,
            long width,
            boolean rip,
            long at,
            Region first,
            @org.jspecify.annotations.Nullable Region second)
            implements Region {}
}
