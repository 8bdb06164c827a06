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

    /**
     * An exercise on job-order costing with its published answer, read in a stored copy of a question and answer page: a year's fixed
     * overhead of 748,000 over 44,000 hours and 1.00 an hour on top make 18 an hour; a job of two hours, 633 of material and 231 of
     * labour costs 900, and 1,170 with a markup of 30 %.
     */
    @Test
    void pricesAPublishedJobFromHoursMaterialAndOverhead() {
        PriceSum job = PriceSum.of(new PriceBasis(
                Hours.ofMinutes(120),
                Money.of("115.50"),
                Money.of(BigDecimal.valueOf(748_000)
                        .divide(BigDecimal.valueOf(44_000))
                        .add(BigDecimal.ONE)),
                Money.of("633"),
                Money.ZERO,
                Contingency.NONE,
                Markup.of("30").toMargin(),
                Money.ZERO,
                Percent.ZERO));

        assertThat(job.labour()).isEqualTo(Money.of("231"));
        assertThat(job.overhead()).isEqualTo(Money.of("36"));
        assertThat(job.cost()).isEqualTo(Money.of("900"));
        assertThat(job.price()).isEqualTo(Money.of("1170"));
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
}
