package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Markup;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** The sum against figures that were not made here. */
class PriceOutsideTest {
    /** A contractor finance article's table of markup and margin, on a cost of 1,000. */
    @ParameterizedTest
    @CsvSource({
        "10, 9.1, 1100",
        "15, 13.0, 1150",
        "20, 16.7, 1200",
        "25, 20.0, 1250",
        "30, 23.1, 1300",
        "35, 25.9, 1350",
        "40, 28.6, 1400",
        "50, 33.3, 1500",
        "100, 50.0, 2000"
    })
    void pricesAtTheMarginOfAPublishedMarkup(String markup, double margin, String price) {
        PriceSum sum = costOnly("1000", Markup.of(markup).toMargin());

        assertThat(sum.price()).isEqualTo(Money.of(price));
        assertThat(sum.keptMargin().percent().amount().doubleValue()).isCloseTo(margin, within(0.05));
    }

    /**
     * The worked example of a contractors' trade magazine on pricing a job from its direct cost, "how to calculate an
     * accurate and profitable job estimate", example 2, read in a stored copy: cost / (1 - margin), cents cut off.
     */
    @ParameterizedTest
    @CsvSource({"60, 2500", "30, 1428", "20, 1250"})
    void pricesAPublishedJobFromItsDirectCost(String margin, int price) {
        assertThat(costOnly("1000", Margin.of(margin)).price().amount().intValue())
                .isEqualTo(price);
    }

    /** A contractor pricing article's table of the markup needed for a margin. */
    @ParameterizedTest
    @CsvSource({"10, 11.1", "15, 17.6", "20, 25.0", "25, 33.3", "30, 42.9", "35, 53.8", "40, 66.7", "50, 100.0"})
    void asksThePublishedMarkupForAMargin(String margin, double markup) {
        PriceSum sum = costOnly("100000", Margin.of(margin));

        double asked =
                Markup.between(sum.cost(), sum.price()).percent().amount().doubleValue();
        assertThat(asked).isCloseTo(markup, within(0.05));
    }

    /** A cost accounting exercise: an overhead of 396,000 over 11,000 hours is 36 an hour. */
    @Test
    void recoversTheWholeOverheadOverTheYear() {
        PriceSum sum = PriceSum.of(new PriceBasis(
                Hours.ofMinutes(11_000 * 60),
                Money.ZERO,
                Money.of("36"),
                Money.ZERO,
                Money.ZERO,
                Contingency.NONE,
                Margin.of("0"),
                Money.ZERO,
                Percent.ZERO));

        assertThat(sum.overhead()).isEqualTo(Money.of("396000"));
    }

    /** An hour worked by hand (invented): 66.26 and 27.73 mixed 75 to 25, 13.10 overhead, a tenth of the price as profit. */
    @Test
    void agreesWithAnHourWorkedByHand() {
        PriceSum hour = PriceSum.of(hours(60, "0", "10"));
        PriceSum actual = PriceSum.of(hours(109 * 60, "2480", "0"));

        assertThat(hour.cost()).isEqualTo(Money.of("69.72"));
        assertThat(hour.price()).isEqualTo(Money.of("77.47"));
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

    private static PriceSum costOnly(String cost, Margin margin) {
        return PriceSum.of(new PriceBasis(
                Hours.ZERO,
                Money.ZERO,
                Money.ZERO,
                Money.of(cost),
                Money.ZERO,
                Contingency.NONE,
                margin,
                Money.ZERO,
                Percent.ZERO));
    }

    private static PriceBasis hours(int minutes, String material, String margin) {
        return new PriceBasis(
                Hours.ofMinutes(minutes),
                Money.of("56.62"),
                Money.of("13.10"),
                Money.of(material),
                Money.ZERO,
                Contingency.NONE,
                Margin.of(margin),
                Money.ZERO,
                Percent.ZERO);
    }
}
