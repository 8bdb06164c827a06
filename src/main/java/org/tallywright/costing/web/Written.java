package org.tallywright.costing.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.MoneyFormat;
import org.tallywright.shared.Quantity;

/** Writes figures as they stand on the page; a difference carries its sign. */
record Written(MoneyFormat format) {
    static final String NONE = "–";

    String money(@Nullable BigDecimal amount) {
        return amount == null ? NONE : format.format(Money.of(amount));
    }

    String money(Optional<BigDecimal> amount) {
        return amount.map(this::money).orElse(NONE);
    }

    String moreMoney(@Nullable BigDecimal amount) {
        return amount == null ? NONE : (amount.signum() > 0 ? "+" : "") + money(amount);
    }

    static String hours(int minutes) {
        return minutes == 0 ? "0 h" : Hours.ofMinutes(minutes).toString();
    }

    static String moreHours(int minutes) {
        return (minutes > 0 ? "+" : "") + hours(minutes);
    }

    /** Whole percent of the plan; nothing where nothing was planned. */
    static String morePercent(int planned, int difference) {
        if (planned == 0) {
            return NONE;
        }
        int percent = BigDecimal.valueOf(difference)
                .movePointRight(2)
                .divide(BigDecimal.valueOf(planned), 0, RoundingMode.HALF_UP)
                .intValueExact();
        return (percent > 0 ? "+" : "") + percent + " %";
    }

    static String share(int part, int all) {
        return all == 0
                ? NONE
                : BigDecimal.valueOf(part).movePointRight(2).divide(BigDecimal.valueOf(all), 0, RoundingMode.HALF_UP)
                        + " %";
    }

    static String percent(Optional<BigDecimal> percent) {
        return percent.map(p -> p.stripTrailingZeros().toPlainString() + " %").orElse(NONE);
    }

    static String quantity(@Nullable BigDecimal quantity) {
        return quantity == null ? NONE : new Quantity(quantity).toString();
    }

    /** Net / gross to two places; nothing where one is missing. */
    static String yield(@Nullable BigDecimal net, BigDecimal gross) {
        return net == null || gross.signum() <= 0
                ? NONE
                : net.divide(gross, 2, RoundingMode.HALF_UP).toPlainString();
    }
}
