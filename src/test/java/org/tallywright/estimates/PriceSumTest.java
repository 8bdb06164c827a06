package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

class PriceSumTest {
    private static final PriceBasis TEN_HOURS = new PriceBasis(
            Hours.ofMinutes(600),
            Money.of("44.00"),
            Money.of("15.00"),
            Money.of("200.00"),
            Money.of("10.00"),
            Contingency.named(Percent.of(5)),
            Margin.of("20"),
            Money.of("10"),
            Percent.of("7"));

    @Test
    void climbsFromHoursToTotal() {
        PriceSum sum = PriceSum.of(TEN_HOURS);

        assertThat(sum.labour()).isEqualTo(Money.of("440.00"));
        assertThat(sum.overhead()).isEqualTo(Money.of("150.00"));
        assertThat(sum.cost()).isEqualTo(Money.of("800.00"));
        assertThat(sum.contingency()).isEqualTo(Money.of("40.00"));
        assertThat(sum.margin()).isEqualTo(Money.of("210.00"));
        assertThat(sum.beforeRounding()).isEqualTo(Money.of("1050.00"));
        assertThat(sum.rounding()).isEqualTo(Money.ZERO);
        assertThat(sum.price()).isEqualTo(Money.of("1050.00"));
        assertThat(sum.tax()).isEqualTo(Money.of("73.50"));
        assertThat(sum.total()).isEqualTo(Money.of("1123.50"));
    }

    @Test
    void roundsToTheNearestStepInALineOfItsOwn() {
        assertThat(rounded("1054.99", "10").rounding()).isEqualTo(Money.of("-4.99"));
        assertThat(rounded("1055.00", "10").rounding()).isEqualTo(Money.of("5.00"));
        assertThat(rounded("1055.37", "0").rounding()).isEqualTo(Money.ZERO);
        assertThat(rounded("1055.37", "0.25").price()).isEqualTo(Money.of("1055.25"));
    }

    @Test
    void neverRoundsWorkDownToNothing() {
        assertThat(rounded("3.10", "10").price()).isEqualTo(Money.of("10.00"));
        assertThat(rounded("0.00", "10").price()).isEqualTo(Money.ZERO);
    }

    @Test
    void addsNoContingencyAtTheMean() {
        Money expected = Money.of("800.00");

        assertThat(Contingency.upTo(expected).on(expected)).isEqualTo(Money.ZERO);
        assertThat(Contingency.upTo(Money.of("912.50")).on(expected)).isEqualTo(Money.of("112.50"));
        assertThat(Contingency.upTo(Money.of("700.00")).on(expected))
                .as("the middle cost lies below the mean")
                .isEqualTo(Money.of("-100.00"));
    }

    @Test
    void keepsAMarginOfTheRoundedPrice() {
        PriceSum sum = rounded("1054.99", "10");

        assertThat(sum.keptMargin()).isEqualTo(Margin.between(Money.of("1054.99"), Money.of("1050.00")));
        assertThat(rounded("0.00", "10").keptMargin()).isEqualTo(Margin.of(BigDecimal.ZERO));
    }

    private static PriceSum rounded(String other, String step) {
        return PriceSum.of(new PriceBasis(
                Hours.ZERO,
                Money.ZERO,
                Money.ZERO,
                Money.ZERO,
                Money.of(other),
                Contingency.NONE,
                Margin.of("0"),
                Money.of(step),
                Percent.ZERO));
    }
}
