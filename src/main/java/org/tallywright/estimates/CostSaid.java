package org.tallywright.estimates;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * What an offer may cost the shop, as many equally likely costs as were drawn. For the owner only.
 */
public final class CostSaid {
    private final Hours hours;
    private final Money material;
    private final long[] cents;
    private final CostBehind behind;

    /**
     * @param hours expected ones, those on no line included
     * @param material expected cost of it
     * @param cents the drawn costs in hundredths, ascending, an even number of them
     */
    public CostSaid(Hours hours, Money material, long[] cents, CostBehind behind) {
        this.hours = hours;
        this.material = material;
        this.cents = cents.clone();
        this.behind = behind;
    }

    public Hours hours() {
        return hours;
    }

    public Money material() {
        return material;
    }

    public CostBehind behind() {
        return behind;
    }

    /** The cost that so many of a hundred such jobs stay under, 1 to 99: halfway between the draws on both sides of it. */
    public Money under(int percent) {
        int above = cents.length * percent / 100;
        return Money.ofCents(Math.floorDiv(cents[above - 1] + cents[above], 2));
    }

    /** The share of draws that cost more than this. */
    Percent dearerThan(Money price) {
        long limit = price.amount().unscaledValue().longValueExact();
        long over = Arrays.stream(cents).filter(cost -> cost > limit).count();
        return Percent.ofFraction(
                BigDecimal.valueOf(over).divide(BigDecimal.valueOf(cents.length), 6, RoundingMode.HALF_UP));
    }

    /**
     * At a price before tax.
     *
     * @param confidence at which it was made, or null
     */
    public MoneyAtRisk at(Money price, Money expected, @Nullable Integer confidence) {
        return new MoneyAtRisk(
                confidence,
                expected,
                under(10),
                under(50),
                under(90),
                under(80),
                dearerThan(price),
                price.minus(expected),
                behind);
    }
}
