package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Unit;
import org.tallywright.shared.Units;

/** Worked by hand from 1 ft = 0.3048 m. */
class FactorInUseTest {
    @Test
    void readsAsItIsKeptInAnImperialShop() {
        FactorInUse factor = new FactorInUse(Measure.FACE, Unit.LF, Units.IMPERIAL);
        assertThat(factor.shown(new BigDecimal("2.25"))).isEqualByComparingTo("2.25");
        assertThat(factor.kept(new BigDecimal("2.25"))).isEqualByComparingTo("2.25");
    }

    @Test
    void readsInMetresInAMetricShop() {
        // 2.25 lf/sf = 2.25 x 0.3048 m / 0.09290304 m2 = 7.38189 m/m2.
        assertThat(new FactorInUse(Measure.FACE, Unit.LM, Units.METRIC).shown(new BigDecimal("2.25")))
                .isEqualByComparingTo("7.38189");
        // 0.13 sheets/sf = 0.13 / 0.09290304 = 1.39931 sheets/m2.
        assertThat(new FactorInUse(Measure.FACE, Unit.SHEET, Units.METRIC).shown(new BigDecimal("0.13")))
                .isEqualByComparingTo("1.39931");
        // 5.75 sf/sf is the same number of m2/m2.
        assertThat(new FactorInUse(Measure.FACE, Unit.M2, Units.METRIC).shown(new BigDecimal("5.75")))
                .isEqualByComparingTo("5.75");
        // 2 each for each cubic ft = 2 / 0.028316846592 = 70.62933 for each m3.
        assertThat(new FactorInUse(Measure.VOLUME, Unit.EACH, Units.METRIC).shown(new BigDecimal("2")))
                .isEqualByComparingTo("70.62933");
    }

    @Test
    void keepsFeetWhicheverWayItIsTyped() {
        assertThat(new FactorInUse(Measure.FACE, Unit.LM, Units.METRIC).kept(new BigDecimal("7.38189")))
                .isEqualByComparingTo("2.25");
    }

    @Test
    void saysItsRuleInWords() {
        PieceKindLine sheets = new PieceKindLine(Ids.next(), Measure.FACE, new BigDecimal("0.13"), true);
        assertThat(new FactorInUse(Measure.FACE, Unit.SHEET, Units.IMPERIAL).words(sheets))
                .isEqualTo("0.13 sheet for each sf of face, rounded up");
        PieceKindLine travel = new PieceKindLine(Ids.next(), Measure.JOB, new BigDecimal("6"), false);
        assertThat(new FactorInUse(Measure.JOB, Unit.TRIP, Units.METRIC).words(travel))
                .isEqualTo("6 trip for the whole job");
    }
}
