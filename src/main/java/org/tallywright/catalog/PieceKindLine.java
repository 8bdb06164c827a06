package org.tallywright.catalog;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.UUID;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/**
 * One task that a kind of piece proposes: quantity = factor x measure.
 *
 * @param factor for a measure in feet, square feet or cubic feet and a quantity in the imperial unit; a task kind in
 *     metres is converted, so the factor stays true when its unit changes
 * @param roundUp to the next whole number, for things that are counted
 */
public record PieceKindLine(UUID taskKindId, Measure measure, BigDecimal factor, boolean roundUp) {
    /** What a figure may be off after a division before it counts as more than the whole number below it. */
    private static final int PLACES_THAT_COUNT = 6;

    /** Factors of 2 and 2.0 are the same. */
    public PieceKindLine {
        factor = factor.stripTrailingZeros();
    }

    /** The quantity in {@code unit} for a piece of that shape; absent where a size it needs is. */
    Optional<Quantity> quantity(PieceGeometry piece, Unit unit) {
        return piece.measure(measure).map(m -> rounded(inUnit(m.multiply(factor), unit), unit));
    }

    private static BigDecimal inUnit(BigDecimal imperial, Unit unit) {
        return unit.isMetric() ? unit.counterpart().toCounterpart(imperial) : imperial;
    }

    private Quantity rounded(BigDecimal exact, Unit unit) {
        BigDecimal figure = exact.setScale(PLACES_THAT_COUNT, RoundingMode.HALF_UP);
        if (roundUp) {
            return new Quantity(figure.setScale(0, RoundingMode.CEILING).max(BigDecimal.ONE));
        }
        int places = unit.places();
        return new Quantity(figure.setScale(places, RoundingMode.HALF_UP).max(BigDecimal.ONE.movePointLeft(places)));
    }
}
