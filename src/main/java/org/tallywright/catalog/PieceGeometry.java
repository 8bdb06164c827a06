package org.tallywright.catalog;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/**
 * The measures of a piece, in feet, square feet and cubic feet, from exact lengths; rectangles throughout, so a slope
 * or a taper counts as its outer box. A measure is absent where a size it needs is.
 *
 * @param width in units of 3.125 micrometres, as the other two
 * @param count how many alike
 */
public record PieceGeometry(
        @Nullable Long width,
        @Nullable Long height,
        @Nullable Long depth,
        int count) {
    private static final BigDecimal UNITS_PER_FOOT = BigDecimal.valueOf(Length.FOOT);

    /** Of all that are alike together. */
    public Optional<BigDecimal> measure(Measure measure) {
        return switch (measure) {
            case JOB -> Optional.of(BigDecimal.ONE);
            case EACH -> all(Optional.of(BigDecimal.ONE));
            case WIDTH -> all(feet(width));
            case HEIGHT -> all(feet(height));
            case DEPTH -> all(feet(depth));
            case FACE -> all(product(feet(width), feet(height)));
            case FLOOR -> all(product(feet(width), feet(depth)));
            case VOLUME -> all(product(product(feet(width), feet(height)), feet(depth)));
            case PERIMETER ->
                all(feet(width).flatMap(w -> feet(height).map(h -> w.add(h).multiply(BigDecimal.valueOf(2)))));
        };
    }

    private Optional<BigDecimal> all(Optional<BigDecimal> one) {
        return one.map(m -> m.multiply(BigDecimal.valueOf(count)));
    }

    private static Optional<BigDecimal> product(Optional<BigDecimal> a, Optional<BigDecimal> b) {
        return a.flatMap(x -> b.map(y -> x.multiply(y, MathContext.DECIMAL128)));
    }

    private static Optional<BigDecimal> feet(@Nullable Long units) {
        return Optional.ofNullable(units)
                .filter(u -> u > 0)
                .map(u -> BigDecimal.valueOf(u).divide(UNITS_PER_FOOT, MathContext.DECIMAL128));
    }
}
