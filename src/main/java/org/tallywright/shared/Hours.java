package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * Time worked, in whole minutes. Sums may pass a day and differences may be negative; what a person types for one
 * entry may not, see {@link #parse}.
 */
public record Hours(int minutes) implements Comparable<Hours> {
    public static final Hours ZERO = new Hours(0);
    static final int DAY = 24 * 60;

    public static Hours ofMinutes(int minutes) {
        return new Hours(minutes);
    }

    /**
     * Reads what is typed for one entry: {@code 2}, {@code 2.5}, {@code 2,5}, {@code 2:30}, {@code 2h30},
     * {@code 45m}. Above nothing and up to 24 hours; parts of a minute are rounded half up.
     *
     * @throws NotUnderstood with a sentence for the person who typed it
     */
    public static Hours parse(String typed) {
        return Durations.read(typed, DAY).hours();
    }

    /** As {@link #parse}, for the hours of a whole estimate or job: nothing and up to 100,000 hours are allowed. */
    public static Hours parseTotal(String typed) {
        return Durations.read(typed, 6_000_000).hours();
    }

    /** From decimal hours, rounded half up to the minute. */
    public static Hours of(BigDecimal decimalHours) {
        return new Hours(decimalHours
                .multiply(BigDecimal.valueOf(60))
                .setScale(0, RoundingMode.HALF_UP)
                .intValueExact());
    }

    public static Hours sum(Iterable<Hours> all) {
        Hours total = ZERO;
        for (Hours each : all) {
            total = total.plus(each);
        }
        return total;
    }

    public Hours plus(Hours other) {
        return new Hours(Math.addExact(minutes, other.minutes));
    }

    public Hours minus(Hours other) {
        return new Hours(Math.subtractExact(minutes, other.minutes));
    }

    public boolean isZero() {
        return minutes == 0;
    }

    public boolean isNegative() {
        return minutes < 0;
    }

    /** Decimal hours to four places, for sums and exports. */
    public BigDecimal decimal() {
        return BigDecimal.valueOf(minutes).divide(BigDecimal.valueOf(60), 4, RoundingMode.HALF_UP);
    }

    @Override
    public int compareTo(Hours other) {
        return Integer.compare(minutes, other.minutes);
    }

    /** {@code 2 h 30}, {@code 2 h}, {@code 45 min}, {@code -1 h 05}; {@link #parse} reads every positive one back. */
    @Override
    public String toString() {
        long all = Math.abs((long) minutes);
        String sign = minutes < 0 ? "-" : "";
        if (all < 60) {
            return sign + all + " min";
        }
        return sign + all / 60 + " h" + (all % 60 == 0 ? "" : String.format(Locale.ROOT, " %02d", all % 60));
    }
}
