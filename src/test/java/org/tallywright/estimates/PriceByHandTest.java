package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** The sum against invented figures that were worked apart from the program. */
class PriceByHandTest {
    /**
     * An hour worked by hand, invented: three quarters of 66.26 and a quarter of 27.73 are 56.63, with 13.10 of overhead 69.73; a tenth of
     * the price as profit makes 77.48.
     */
    @Test
    void agreesWithAnHourWorkedByHand() {
        PriceSum hour = PriceSum.of(hours(60, "0", "10"));
        PriceSum actual = PriceSum.of(hours(109 * 60, "2480", "0"));

        assertThat(hour.cost()).isEqualTo(Money.of("69.73"));
        assertThat(hour.price()).isEqualTo(Money.of("77.48"));
        assertThat(actual.cost().amount().doubleValue()).isCloseTo(10_080, within(1.0));
        assertThat(Margin.between(actual.cost(), Money.of("10700"))
                        .percent()
                        .amount()
                        .doubleValue())
                .isCloseTo(5.8, within(0.05));
    }

    /**
     * Invented bids of the demo shop. Their contingency is an amount here because it was then a percentage of another
     * base, and their hours go to the hundredth where ours go to the minute, hence two sums: hours within a dollar, and
     * the ladder from their own labour to the cent. Their margin includes what was rounded.
     */
    @ParameterizedTest
    @CsvSource({
        "142.97, 44, 6290.68, 3200.76, 78.58, 2144.55, 478.50, 2326.93, 14520, 16",
        "145.42, 44, 6398.48, 3691.76, 78.99, 2181.30, 508.46, 2631.01, 15490, 17",
        "116.82, 44, 5140.08, 2024.36, 169.67, 1752.30, 293.36, 1280.23, 10660, 12",
        "259.59, 37.5, 9734.63, 7503.23, 161.64, 3893.85, 869.98, 4216.67, 26380, 16",
        "244.90, 37.5, 9183.75, 6883.70, 161.64, 3673.50, 811.45, 3945.96, 24660, 16",
        "350.86, 37.5, 13157.25, 13629.82, 254.84, 5262.90, 1081.68, 6833.51, 40220, 17",
        "331.00, 37.5, 12412.50, 12504.42, 254.84, 4965.00, 1006.87, 6376.37, 37520, 17",
        "218.18, 40, 8727.20, 2795.22, 83.37, 3272.70, 580.29, 2111.22, 17570, 12",
        "206.48, 40, 8259.20, 7128.03, 84.00, 3097.20, 773.56, 3418.01, 22760, 15",
        "118.28, 40, 4731.20, 2747.08, 84.43, 1774.20, 453.76, 1869.33, 11660, 16"
    })
    void comesToTheDemoShopsBids(
            BigDecimal hours,
            String rate,
            BigDecimal labour,
            String material,
            String other,
            BigDecimal overhead,
            String contingency,
            BigDecimal margin,
            String price,
            String marginPercent) {
        PriceSum work = PriceSum.of(new PriceBasis(
                Hours.of(hours),
                Money.of(rate),
                Money.of("15.00"),
                Money.ZERO,
                Money.ZERO,
                Contingency.NONE,
                Margin.of("0"),
                Money.ZERO,
                Percent.ZERO));
        PriceSum sum = PriceSum.of(new PriceBasis(
                Hours.ZERO,
                Money.ZERO,
                Money.ZERO,
                Money.of(material).plus(Money.of(labour)),
                Money.of(other).plus(Money.of(overhead)),
                expected -> Money.of(contingency),
                Margin.of(marginPercent),
                Money.of("10"),
                Percent.ZERO));

        assertThat(work.labour().amount()).isCloseTo(labour, within(BigDecimal.ONE));
        assertThat(work.overhead().amount()).isCloseTo(overhead, within(BigDecimal.ONE));
        assertThat(sum.margin().plus(sum.rounding())).isEqualTo(Money.of(margin));
        assertThat(sum.price()).isEqualTo(Money.of(price));
    }

    private static PriceBasis hours(int minutes, String material, String margin) {
        return new PriceBasis(
                Hours.ofMinutes(minutes),
                mixed(),
                Money.of("13.10"),
                Money.of(material),
                Money.ZERO,
                Contingency.NONE,
                Margin.of(margin),
                Money.ZERO,
                Percent.ZERO);
    }

    private static Money mixed() {
        UUID nobody = new UUID(0, 0);
        return new LabourRate(
                        null,
                        List.of(
                                new LabourRate.Part(nobody, "One", Percent.of("75"), Money.of("66.26")),
                                new LabourRate.Part(nobody, "Two", Percent.of("25"), Money.of("27.73"))))
                .amount()
                .orElseThrow();
    }
}
