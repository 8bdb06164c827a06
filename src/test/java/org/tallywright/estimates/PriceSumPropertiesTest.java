package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** Whatever goes in, the printed lines add up to the cent. */
class PriceSumPropertiesTest {
    @Test
    void linesAddUpToTheCent() {
        Tries.of(1000, draw -> addsUp(basis(draw)));
    }

    private static void addsUp(PriceBasis basis) {
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

    @Test
    void priceIsAWholeNumberOfStepsNoFartherThanHalfOfOne() {
        Tries.of(1000, draw -> isWholeSteps(basis(draw)));
    }

    private static void isWholeSteps(PriceBasis basis) {
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

    @Test
    void moreWorkIsNeverCheaper() {
        Tries.of(1000, draw -> costsMore(basis(draw)));
    }

    private static void costsMore(PriceBasis basis) {
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

    private static PriceBasis basis(Draw draw) {
        return new PriceBasis(
                Hours.ofMinutes(draw.between(0, 200_000)),
                cents(draw, 20_000),
                cents(draw, 20_000),
                cents(draw, 10_000_000),
                cents(draw, 1_000_000),
                Contingency.named(Percent.of(thousandths(draw, 100_000))),
                Margin.of(thousandths(draw, 99_900)),
                Money.of(draw.of("0", "0.05", "1", "5", "10", "25", "100")),
                Percent.of(thousandths(draw, 30_000)));
    }

    private static Money cents(Draw draw, long most) {
        return Money.ofCents(draw.between(0, most));
    }

    private static BigDecimal thousandths(Draw draw, int most) {
        return BigDecimal.valueOf(draw.between(0, most), 3);
    }
}
