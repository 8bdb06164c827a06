package org.tallywright.costing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a job takes and brings: planned, or up to now. Amounts in the shop's currency, before tax.
 *
 * @param price accepted bid and change orders; null while nothing is accepted
 */
public record CostSums(
        int minutes,
        BigDecimal labour,
        BigDecimal overhead,
        BigDecimal material,
        BigDecimal other,
        @Nullable BigDecimal price) {
    private static final BigDecimal HOUR = BigDecimal.valueOf(60);

    /** Labour + overhead + material + other. */
    public BigDecimal cost() {
        return labour.add(overhead).add(material).add(other);
    }

    /** Price - cost. Of a plan it holds the contingency. */
    public Optional<BigDecimal> margin() {
        return Optional.ofNullable(price).map(p -> p.subtract(cost()));
    }

    /** Margin / price in percent, to one place; empty without a price above nothing. */
    public Optional<BigDecimal> marginPercent() {
        BigDecimal agreed = price;
        return agreed == null || agreed.signum() <= 0
                ? Optional.empty()
                : margin().map(m -> m.movePointRight(2).divide(agreed, 1, RoundingMode.HALF_UP));
    }

    /** (Price - material) / hours: what an hour earned, to the cent; empty without a price or an hour. */
    public Optional<BigDecimal> earnedPerHour() {
        BigDecimal agreed = price;
        return agreed == null || minutes == 0
                ? Optional.empty()
                : Optional.of(agreed.subtract(material)
                        .multiply(HOUR)
                        .divide(BigDecimal.valueOf(minutes), 2, RoundingMode.HALF_EVEN));
    }

    /** (Labour + overhead) / hours; empty without an hour. */
    public Optional<BigDecimal> costOfHour() {
        return minutes == 0
                ? Optional.empty()
                : Optional.of(labour.add(overhead)
                        .multiply(HOUR)
                        .divide(BigDecimal.valueOf(minutes), MathContext.DECIMAL128));
    }
}
