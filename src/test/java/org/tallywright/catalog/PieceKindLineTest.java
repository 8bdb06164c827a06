package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tallywright.catalog.PieceGeometryTest.piece;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

class PieceKindLineTest {
    /** Face 6 ft x 7 1/2 ft = 45 sf. */
    private final PieceGeometry box = piece("72", "90", "18", 1);

    @Test
    void multipliesTheMeasureByTheFactor() {
        // 45 sf x 2.25 lf/sf = 101.25 lf, kept to a tenth.
        assertThat(line(Measure.FACE, "2.25", false).quantity(box, Unit.LF)).hasValue(Quantity.of("101.3"));
    }

    @Test
    void roundsCountedThingsUp() {
        // 45 sf x 0.13 sheets/sf = 5.85 sheets.
        assertThat(line(Measure.FACE, "0.13", true).quantity(box, Unit.SHEET)).hasValue(Quantity.of(6));
    }

    @Test
    void doesNotRoundAWholeNumberUp() {
        // A third of 3 ft is one case, whatever a division leaves behind the point.
        PieceGeometry third = piece("1", "1", "1", 1);
        assertThat(line(Measure.WIDTH, "12", true).quantity(third, Unit.EACH)).hasValue(Quantity.of(1));
    }

    @Test
    void proposesAtLeastOneOfWhatIsCounted() {
        assertThat(line(Measure.FACE, "0.00001", true).quantity(box, Unit.EACH)).hasValue(Quantity.of(1));
        assertThat(line(Measure.FACE, "0.00001", false).quantity(box, Unit.SF)).hasValue(Quantity.of("0.1"));
    }

    @Test
    void convertsToTheMetricUnitOfTheTaskKind() {
        // 45 sf x 1 = 45 x 0.09290304 m2 = 4.1806368 m2; 27 ft of edge = 8.2296 m; 67.5 bf = 0.15928 m3.
        assertThat(line(Measure.FACE, "1", false).quantity(box, Unit.M2)).hasValue(Quantity.of("4.18"));
        assertThat(line(Measure.PERIMETER, "1", false).quantity(box, Unit.LM)).hasValue(Quantity.of("8.23"));
        assertThat(line(Measure.FACE, "1.5", false).quantity(box, Unit.M3)).hasValue(Quantity.of("0.1593"));
    }

    @Test
    void isSilentWhereASizeIsMissing() {
        assertThat(line(Measure.FLOOR, "1", false).quantity(new PieceGeometry(97_536L, null, null, 1), Unit.SF))
                .isEmpty();
    }

    private static PieceKindLine line(Measure measure, String factor, boolean roundUp) {
        return new PieceKindLine(Ids.next(), measure, new BigDecimal(factor), roundUp);
    }
}
