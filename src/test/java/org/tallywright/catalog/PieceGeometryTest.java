package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

/** Worked by hand: a box 6 ft wide, 7 1/2 ft high, 1 ft 6 in deep, and a metric one. */
class PieceGeometryTest {
    private final PieceGeometry box = piece("72", "90", "18", 1);

    @Test
    void measuresLengthsInFeet() {
        assertThat(box.measure(Measure.WIDTH))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("6"));
        assertThat(box.measure(Measure.HEIGHT))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("7.5"));
        assertThat(box.measure(Measure.DEPTH))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("1.5"));
    }

    @Test
    void measuresTheFaceThePlanTheVolumeAndTheEdge() {
        assertThat(box.measure(Measure.FACE))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("45"));
        assertThat(box.measure(Measure.FLOOR))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("9"));
        assertThat(box.measure(Measure.VOLUME))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("67.5"));
        assertThat(box.measure(Measure.PERIMETER))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("27"));
    }

    @Test
    void countsAlikePiecesInEverythingButTheJob() {
        PieceGeometry three = piece("72", "90", "18", 3);
        assertThat(three.measure(Measure.EACH))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("3"));
        assertThat(three.measure(Measure.FACE))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("135"));
        assertThat(three.measure(Measure.JOB))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("1"));
    }

    @Test
    void isExactForFractionsOfAnInch() {
        // 47 5/16 in x 95 1/4 in = 4506.515625 sq in, over 144 = 31.2952473958333...
        assertThat(piece("47 5/16", "95 1/4", "14 3/8", 1).measure(Measure.FACE))
                .hasValueSatisfying(m -> assertThat(m)
                        .isCloseTo(
                                new BigDecimal("31.2952473958333333333"),
                                org.assertj.core.data.Offset.offset(new BigDecimal("1e-18"))));
    }

    @Test
    void takesMillimetresForTheFeetTheyAre() {
        // 914.4 mm is 3 ft exactly.
        PieceGeometry metric =
                new PieceGeometry(Length.parse("914.4", Units.METRIC).units(), null, null, 1);
        assertThat(metric.measure(Measure.WIDTH))
                .hasValueSatisfying(m -> assertThat(m).isEqualByComparingTo("3"));
    }

    @Test
    void hasNoMeasureThatNeedsAnUnknownSize() {
        PieceGeometry flat =
                new PieceGeometry(Length.parse("72", Units.IMPERIAL).units(), 0L, null, 1);
        assertThat(flat.measure(Measure.WIDTH)).isPresent();
        assertThat(flat.measure(Measure.FACE)).isEmpty();
        assertThat(flat.measure(Measure.FLOOR)).isEmpty();
        assertThat(flat.measure(Measure.PERIMETER)).isEmpty();
        assertThat(flat.measure(Measure.EACH)).isPresent();
    }

    static PieceGeometry piece(String width, String height, String depth, int count) {
        return new PieceGeometry(
                Length.parse(width, Units.IMPERIAL).units(),
                Length.parse(height, Units.IMPERIAL).units(),
                Length.parse(depth, Units.IMPERIAL).units(),
                count);
    }
}
