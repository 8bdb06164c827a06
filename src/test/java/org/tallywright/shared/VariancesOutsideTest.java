package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Material and labour variances against published exercises. */
class VariancesOutsideTest {
    static List<Checks.Row> variances() {
        return Checks.read("variances.csv");
    }

    @ParameterizedTest
    @MethodSource("variances")
    void splitsACost(Checks.Row row) {
        BigDecimal actual = row.number("actual");
        BigDecimal second = row.number("second");
        BigDecimal third = row.number("third");
        BigDecimal found = switch (row.text("check")) {
            case "price" -> Variances.price(actual, second, third);
            case "quantity" -> Variances.quantity(actual, second, third);
            case "rate" -> Variances.rate(actual, second, third);
            case "efficiency" -> Variances.efficiency(actual, second, third);
            default -> throw new IllegalStateException(row.toString());
        };
        assertThat(found).isCloseTo(row.number("expected"), within(row.number("tolerance")));
    }
}
