package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** Whatever goes in, the printed lines add up to the cent, and to a price that is worked here from the formula alone. */
class PriceSumPropertiesTest {
    @Test
    void linesAddUpToTheCent() {
        Tries.of(1000, draw -> addsUp(basis(draw)));
    }

    private static void addsUp(PriceBasis basis) {
        PriceSum sum = PriceSum.of(basis);
        List<BigDecimal> lines = new ArrayList<>(Stream.of(
                        sum.labour(),
                        sum.material(),
                        sum.other(),
                        sum.overhead(),
                        sum.contingency(),
                        sum.margin(),
                        sum.rounding())
                .map(Money::amount)
                .toList());
        BigDecimal price = byFormula(basis);
        Collections.shuffle(lines, new Random(basis.hours().minutes()));

        assertThat(lines.stream().reduce(BigDecimal.ZERO, BigDecimal::add)).isEqualByComparingTo(price);
        assertThat(sum.price().amount()).isEqualByComparingTo(price);
        assertThat(sum.total().amount()).isEqualByComparingTo(price.add(cent(price.multiply(share(basis.tax())))));
    }

    /** (cost + contingency) / (1 - margin), cents at each step as on the paper and halves to the even one, then to the nearest step but never to nothing. */
    private static BigDecimal byFormula(PriceBasis basis) {
        BigDecimal cost = hourly(basis, basis.labourRate())
                .add(hourly(basis, basis.overheadRate()))
                .add(basis.material().amount())
                .add(basis.other().amount());
        BigDecimal full = cost.add(basis.contingency().on(Money.of(cost)).amount());
        BigDecimal kept = BigDecimal.ONE.subtract(share(basis.margin().percent()));
        BigDecimal before = cent(full.divide(kept, MathContext.DECIMAL128));
        BigDecimal step = basis.roundingStep().amount();
        if (step.signum() == 0 || before.signum() == 0) {
            return before;
        }
        return before.divide(step, 0, RoundingMode.HALF_UP).max(BigDecimal.ONE).multiply(step);
    }

    private static BigDecimal hourly(PriceBasis basis, Money rate) {
        return cent(BigDecimal.valueOf(basis.hours().minutes())
                .multiply(rate.amount())
                .divide(BigDecimal.valueOf(60), MathContext.DECIMAL128));
    }

    private static BigDecimal share(Percent percent) {
        return percent.amount().movePointLeft(2);
    }

    private static BigDecimal cent(BigDecimal amount) {
        return amount.setScale(2, RoundingMode.HALF_EVEN);
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
