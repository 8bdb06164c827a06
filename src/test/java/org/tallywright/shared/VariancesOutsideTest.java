package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Material and labour variances against published exercises. */
class VariancesOutsideTest {
    static List<Checks.Row> variances() {
        return Checks.read("variances.csv");
    }

    static List<Checks.Row> mixtures() {
        return Checks.read("mix_and_yield.csv");
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

    @ParameterizedTest
    @MethodSource("mixtures")
    void splitsAMixture(Checks.Row row) {
        List<Variances.Ingredient> mixture = Arrays.stream(
                        row.text("used_part_price").split(" "))
                .map(VariancesOutsideTest::ingredient)
                .toList();
        BigDecimal mix = Variances.mix(mixture);
        BigDecimal yield = Variances.yield(mixture, row.number("output"), row.number("output_of_standard"));
        BigDecimal found = switch (row.text("check")) {
            case "mix" -> mix;
            case "yield" -> yield;
            case "usage" -> mix.add(yield);
            default -> throw new IllegalStateException(row.toString());
        };
        assertThat(found).isCloseTo(row.number("expected"), within(row.number("tolerance")));
    }

    private static Variances.Ingredient ingredient(String words) {
        String[] n = words.split(":");
        return new Variances.Ingredient(new BigDecimal(n[0]), new BigDecimal(n[1]), new BigDecimal(n[2]));
    }
}
