package org.tallywright.catalog.web;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Units;
import org.tallywright.web.FormReader;

/** Sizes of an imagined piece as typed, to see what its kind would propose. */
record TrySizes(
        @Nullable String width,
        @Nullable String height,
        @Nullable String depth,
        @Nullable String count) {
    private static final long LONGEST =
            Length.ofMillimetres(BigDecimal.valueOf(100_000)).units();

    /** Lengths in units of 3.125 micrometres, null where not given. */
    record Read(
            @Nullable Long width,
            @Nullable Long height,
            @Nullable Long depth,
            int count) {}

    /** The sizes, or null where none is given or one is refused. */
    @Nullable
    Read read(FormReader read, Units units) {
        Long readWidth = size("width", width, read, units);
        Long readHeight = size("height", height, read, units);
        Long readDepth = size("depth", depth, read, units);
        Integer readCount = read.optional("count", count, () -> whole(Picked.text(count)));
        boolean none = readWidth == null && readHeight == null && readDepth == null && readCount == null;
        return none || read.refused()
                ? null
                : new Read(readWidth, readHeight, readDepth, readCount == null ? 1 : readCount);
    }

    private static @Nullable Long size(String field, @Nullable String typed, FormReader read, Units units) {
        return read.optional(field, typed, () -> {
            long size = Length.parseSize(Picked.text(typed), units).units();
            if (size > LONGEST) {
                throw new NotUnderstood("A piece is at most 100 m long.");
            }
            return size;
        });
    }

    private static int whole(String typed) {
        String digits = typed.strip();
        if (!digits.matches("\\d{1,3}") || Integer.parseInt(digits) == 0) {
            throw new NotUnderstood("How many is a whole number from 1 to 999.");
        }
        return Integer.parseInt(digits);
    }
}
