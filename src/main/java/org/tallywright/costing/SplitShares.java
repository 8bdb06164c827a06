package org.tallywright.costing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what each task and material adds to a cause, exactly, and writes it in cents and minutes. What is rounded is the
 * running total, so that the shares of a cause add up to its line; each is within a cent, or a minute, of the exact one.
 */
final class SplitShares {
    private static final BigDecimal HOUR = BigDecimal.valueOf(60);

    private record Exact(
            SplitSource source, BigDecimal amount, @Nullable BigDecimal hours) {}

    private final Map<Cause, List<Exact>> byCause = new EnumMap<>(Cause.class);

    void add(Cause cause, SplitSource source, BigDecimal amount, @Nullable BigDecimal hours) {
        byCause.computeIfAbsent(cause, c -> new ArrayList<>()).add(new Exact(source, amount, hours));
    }

    /** By cause, in the order of the rows they came from; a share of nothing is left out. */
    List<SplitShare> list() {
        List<SplitShare> shares = new ArrayList<>();
        byCause.forEach((cause, parts) -> shares.addAll(rounded(cause, parts)));
        return shares;
    }

    private static List<SplitShare> rounded(Cause cause, List<Exact> parts) {
        List<SplitShare> shares = new ArrayList<>();
        BigDecimal amounts = BigDecimal.ZERO;
        BigDecimal hours = BigDecimal.ZERO;
        for (Exact part : parts) {
            BigDecimal amount = cents(amounts.add(part.amount)).subtract(cents(amounts));
            amounts = amounts.add(part.amount);
            Integer minutes = null;
            if (part.hours != null) {
                minutes = minutes(hours.add(part.hours)) - minutes(hours);
                hours = hours.add(part.hours);
            }
            if (amount.signum() != 0 || (minutes != null && minutes != 0)) {
                shares.add(new SplitShare(cause, part.source, amount, minutes));
            }
        }
        return shares;
    }

    private static BigDecimal cents(BigDecimal amount) {
        return amount.setScale(2, RoundingMode.HALF_EVEN);
    }

    private static int minutes(BigDecimal hours) {
        return hours.multiply(HOUR).setScale(0, RoundingMode.HALF_UP).intValueExact();
    }

    static @Nullable Integer wholeMinutes(@Nullable BigDecimal hours) {
        return hours == null ? null : minutes(hours);
    }
}
