package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Unit factors against the definition of the inch and published factors. */
class UnitOutsideTest {
    static List<Checks.Row> conversions() {
        return Checks.read("unit_conversions.csv");
    }

    @ParameterizedTest
    @MethodSource("conversions")
    void convertsExactly(Checks.Row row) {
        BigDecimal factor = row.number("factor");
        if (row.text("from").equals("in")) {
            assertThat(Length.ofInches(BigDecimal.ONE).millimetres()).isEqualByComparingTo(factor);
            return;
        }
        Unit from = Unit.of(row.text("from"));
        Unit to = Unit.of(row.text("to"));
        assertThat(from.counterpart()).isEqualTo(to);
        assertThat(from.toCounterpart(BigDecimal.ONE)).isEqualByComparingTo(factor);
        assertThat(to.toCounterpart(factor)).isEqualByComparingTo(BigDecimal.ONE);
    }

    @Test
    void everyMeasuredUnitIsChecked() {
        long measured = Arrays.stream(Unit.values())
                .filter(u -> u.isMeasured() && !u.isMetric())
                .count();
        assertThat(conversions()).hasSize((int) measured + 1);
    }
}
