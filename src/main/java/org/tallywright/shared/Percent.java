package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A number of hundredths, to eight places: 16 is 16 %. What it is a percentage of is said where it is used. */
public record Percent(BigDecimal amount) implements Comparable<Percent> {
    public static final Percent ZERO = new Percent(BigDecimal.ZERO);
    private static final BigDecimal MOST = BigDecimal.valueOf(1000);

    public Percent {
        amount = Decimals.plain(amount.setScale(8, RoundingMode.HALF_UP));
    }

    public static Percent of(BigDecimal amount) {
        return new Percent(amount);
    }

    public static Percent of(long amount) {
        return new Percent(BigDecimal.valueOf(amount));
    }

    public static Percent ofFraction(BigDecimal fraction) {
        return new Percent(fraction.movePointRight(2));
    }

    /** Reads {@code 16}, {@code 16 %}, {@code 16.5} and {@code 16,5}; from 0 to 1,000, up to three places. */
    public static Percent of(String typed) {
        BigDecimal number = Decimals.read(Decimals.tidy(typed).replaceFirst(" ?(?:%|percent)$", ""));
        if (number == null) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is not a percentage; write it like 16 or 16.5.");
        }
        if (number.compareTo(MOST) > 0 || Decimals.plain(number).scale() > 3) {
            throw new NotUnderstood("A percentage goes from 0 to 1,000 with up to three places.");
        }
        return new Percent(number);
    }

    /** 0.16 for 16 %. */
    public BigDecimal fraction() {
        return amount.movePointLeft(2);
    }

    @Override
    public int compareTo(Percent other) {
        return amount.compareTo(other.amount);
    }

    /** At most two places, no sign after it: {@code 16}, {@code 16.67}. */
    @Override
    public String toString() {
        return Decimals.plain(amount.setScale(2, RoundingMode.HALF_UP)).toPlainString();
    }
}
