package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** Whatever goes in, the printed lines add up to the cent. */
class PriceSumPropertiesTest {
    @Property
    void linesAddUpToTheCent(@ForAll("bases") PriceBasis basis) {
        PriceSum sum = PriceSum.of(basis);

        BigDecimal lines = sum.labour()
                .amount()
                .add(sum.material().amount())
                .add(sum.other().amount())
                .add(sum.overhead().amount())
                .add(sum.contingency().amount())
                .add(sum.margin().amount())
                .add(sum.rounding().amount());
        assertThat(lines).isEqualTo(sum.price().amount());
        assertThat(lines.add(sum.tax().amount())).isEqualTo(sum.total().amount());
    }

    @Property
    void priceIsAWholeNumberOfStepsNoFartherThanHalfOfOne(@ForAll("bases") PriceBasis basis) {
        PriceSum sum = PriceSum.of(basis);
        BigDecimal step = basis.roundingStep().amount();

        if (step.signum() == 0) {
            assertThat(sum.rounding()).isEqualTo(Money.ZERO);
        } else {
            assertThat(sum.price().amount().remainder(step)).isEqualByComparingTo(BigDecimal.ZERO);
            boolean small = sum.beforeRounding().amount().compareTo(step) < 0;
            assertThat(sum.rounding().amount().abs())
                    .isLessThanOrEqualTo(small ? step : step.divide(BigDecimal.valueOf(2)));
        }
    }

    @Property
    void moreWorkIsNeverCheaper(@ForAll("bases") PriceBasis basis) {
        PriceBasis more = new PriceBasis(
                basis.hours().plus(Hours.ofMinutes(60)),
                basis.labourRate(),
                basis.overheadRate(),
                basis.material().plus(Money.ofCents(1)),
                basis.other(),
                basis.contingency(),
                basis.margin(),
                basis.roundingStep(),
                basis.tax());

        assertThat(PriceSum.of(more).price())
                .isGreaterThanOrEqualTo(PriceSum.of(basis).price());
    }

    @Provide
    Arbitrary<PriceBasis> bases() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 200_000),
                        cents(20_000),
                        cents(20_000),
                        cents(10_000_000),
                        cents(1_000_000),
                        thousandths(0, 100_000),
                        Combinators.combine(
                                        thousandths(0, 99_900),
                                        Arbitraries.of("0", "0.05", "1", "5", "10", "25", "100"),
                                        thousandths(0, 30_000))
                                .as(Rest::new))
                .as((minutes, rate, overhead, material, other, contingency, rest) -> new PriceBasis(
                        Hours.ofMinutes(minutes),
                        rate,
                        overhead,
                        material,
                        other,
                        Contingency.named(Percent.of(contingency)),
                        Margin.of(rest.margin()),
                        Money.of(rest.step()),
                        Percent.of(rest.tax())));
    }

    private record Rest(BigDecimal margin, String step, BigDecimal tax) {}

    private static Arbitrary<Money> cents(int most) {
        return Arbitraries.longs().between(0, most).map(Money::ofCents);
    }

    private static Arbitrary<BigDecimal> thousandths(int least, int most) {
        return Arbitraries.integers().between(least, most).map(n -> BigDecimal.valueOf(n, 3));
    }
}
