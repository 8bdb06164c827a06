package org.tallywright.past;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.Measure;
import org.tallywright.shared.Length;

/**
 * Which past pieces are looked for.
 *
 * @param words in a piece's, job's, client's or kind's name, or a job's number; empty finds all
 * @param width of the new piece; the nearest in size come first. Likewise the other two
 * @param all also those that are not built
 * @param not a job that is left out, null for none
 */
public record BuiltSearch(
        @Nullable UUID kind,
        String words,
        @Nullable Length width,
        @Nullable Length height,
        @Nullable Length depth,
        boolean all,
        @Nullable UUID not) {

    /** The parameter for a substring search; the signs that mean something there mean themselves. */
    String like() {
        return "%" + words.toLowerCase(Locale.ROOT).replaceAll("([\\\\%_])", "\\\\$1") + "%";
    }

    public boolean hasSizes() {
        return width != null || height != null || depth != null;
    }

    /** Of one piece of those sizes; empty where one that it takes is not given. */
    public Optional<BigDecimal> measure(Measure natural) {
        return PastPiece.shape(width, height, depth, 1).measure(natural);
    }

    /**
     * How far a piece is from the sizes: the sum of squared log ratios of those that are asked for, so that twice and half as
     * wide are equally far; a size that is not known is as far as ten times.
     */
    double distance(BuiltPiece piece) {
        return distance(width, piece.details().width())
                + distance(height, piece.details().height())
                + distance(depth, piece.details().depth());
    }

    private static double distance(@Nullable Length wanted, @Nullable Length there) {
        if (wanted == null) {
            return 0;
        }
        double ratio = there == null || there.units() <= 0 ? 10 : (double) there.units() / wanted.units();
        return Math.pow(Math.log(ratio), 2);
    }
}
