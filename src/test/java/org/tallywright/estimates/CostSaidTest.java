package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** The price at a confidence and what it risks, from drawn costs. */
class CostSaidTest {
    private static final CostBehind NOTHING = new CostBehind(2000, 1, 0, 100, 0, 0, 0, 0, false, 0);

    private static CostSaid of(LongStream cents) {
        return new CostSaid(Hours.ofMinutes(60), Money.ZERO, cents.sorted().toArray(), NOTHING);
    }

    /** 0.01 to 20.00: a fifth of them, 400, lie above the P80. */
    @Test
    void aFifthOfTheDrawsLiesAboveTheP80() {
        CostSaid said = of(LongStream.rangeClosed(1, 2000));
        assertThat(said.under(80)).isEqualTo(Money.of("16.00"));
        assertThat(said.dearerThan(said.under(80))).isEqualTo(Percent.of(20));
        assertThat(said.dearerThan(said.under(50))).isEqualTo(Percent.of(50));
        assertThat(said.dearerThan(said.under(90))).isEqualTo(Percent.of(10));
        assertThat(said.dearerThan(Money.of("20.00"))).isEqualTo(Percent.ZERO);
        assertThat(said.dearerThan(Money.ZERO)).isEqualTo(Percent.of(100));
    }

    @Test
    void costsAsMuchAsThePriceAreNoLoss() {
        assertThat(of(LongStream.generate(() -> 500).limit(2000)).dearerThan(Money.of("5.00")))
                .isEqualTo(Percent.ZERO);
    }

    /** With the margin at nothing, a price at P80 loses money once in five; with a margin less often. */
    @Test
    void aPriceAtAConfidenceLosesNoMoreOftenThanItSays() {
        Tries.of(500, draw -> {
            CostSaid said = drawn(draw);
            int percent = draw.of(50, 80, 90);
            PriceSum sum = PriceSum.of(basis(draw, said, percent));
            assertThat(sum.costWithContingency()).isEqualTo(said.under(percent));
            assertThat(sum.contingency()).isEqualTo(said.under(percent).minus(sum.cost()));
            assertThat(said.dearerThan(sum.beforeRounding()).amount())
                    .isLessThanOrEqualTo(Percent.of(100 - percent).amount());
        });
    }

    @Test
    void aHigherPriceNeverLosesMoreOften() {
        Tries.of(500, draw -> {
            CostSaid said = drawn(draw);
            Money price = Money.ofCents(draw.between(0, 60_000_000));
            Money more = price.plus(Money.ofCents(draw.between(0, 1_000_000)));
            assertThat(said.dearerThan(more)).isLessThanOrEqualTo(said.dearerThan(price));
        });
    }

    @Test
    void linesAndRoundingStillAddUpToTheCent() {
        Tries.of(1000, draw -> {
            CostSaid said = drawn(draw);
            PriceSum sum = PriceSum.of(basis(draw, said, draw.of(50, 80, 90)));
            Money lines = Money.sum(java.util.List.of(
                    sum.labour(),
                    sum.material(),
                    sum.other(),
                    sum.overhead(),
                    sum.contingency(),
                    sum.margin(),
                    sum.rounding()));
            assertThat(lines).isEqualTo(sum.price());
            assertThat(lines.plus(sum.tax())).isEqualTo(sum.total());
            MoneyAtRisk risk = said.at(sum.price(), sum.cost(), null);
            assertThat(risk.profit().plus(risk.expected())).isEqualTo(sum.price());
            assertThat(risk.low()).isLessThanOrEqualTo(risk.likely());
            assertThat(risk.p80()).isBetween(risk.likely(), risk.high());
        });
    }

    private static CostSaid drawn(Draw draw) {
        long least = draw.between(0, 20_000_000);
        long most = least + draw.between(0, 30_000_000);
        long step = Math.max(1, (most - least) / 2000);
        int shape = draw.between(1, 3);
        return new CostSaid(
                Hours.ofMinutes(draw.between(0, 100_000)),
                Money.ofCents(draw.between(0, 5_000_000)),
                LongStream.range(0, 2000)
                        .map(d -> least + step * (long) (Math.pow(d / 2000.0, shape) * 2000))
                        .sorted()
                        .toArray(),
                NOTHING);
    }

    private static PriceBasis basis(Draw draw, CostSaid said, int percent) {
        return new PriceBasis(
                said.hours(),
                Money.ofCents(draw.between(0, 10_000)),
                Money.ofCents(draw.between(0, 5_000)),
                said.material(),
                Money.ofCents(draw.between(0, 100_000)),
                Contingency.upTo(said.under(percent)),
                Margin.of(java.math.BigDecimal.valueOf(draw.between(0, 60))),
                Money.of(draw.of("0", "0.05", "1", "5", "10")),
                Percent.of(draw.between(0, 25)));
    }
}
