package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Labour hours per unit of a task kind (never its inverse), to five places, not negative. */
public record UnitHours(BigDecimal amount) implements Comparable<UnitHours> {
    public static final UnitHours ZERO = new UnitHours(BigDecimal.ZERO);
    private static final BigDecimal MOST = BigDecimal.valueOf(1000);

    public UnitHours {
        amount = amount.setScale(5, RoundingMode.HALF_UP);
        if (amount.signum() < 0) {
            throw new NotUnderstood("Hours per unit cannot be negative.");
        }
    }

    public static UnitHours of(BigDecimal amount) {
        return new UnitHours(amount);
    }

    /** Reads what is above nothing and up to 1,000, in decimal hours: {@code 0.014}, {@code 0,014}, {@code 2 1/2}, {@code 1.5 h}; or minutes with m: {@code 3 min}. */
    public static UnitHours of(String typed) {
        String tidy = Decimals.tidy(typed);
        String bare = tidy.replaceFirst(" ?(?:h|hr|hrs|hours?|m|min|minutes?)$", "");
        boolean minutes = tidy.substring(bare.length()).strip().startsWith("m");
        BigDecimal number = Decimals.readMixed(bare);
        if (number == null) {
            throw new NotUnderstood(
                    "\"" + Decimals.shown(typed) + "\" is not hours per unit; write it like 0.25 or 15 min.");
        }
        BigDecimal hours = minutes ? number.divide(BigDecimal.valueOf(60), MathContext.DECIMAL64) : number;
        if (hours.compareTo(MOST) > 0) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is more than 1,000 hours per unit.");
        }
        UnitHours read = new UnitHours(hours);
        if (read.equals(ZERO)) {
            throw new NotUnderstood("Hours per unit are more than nothing.");
        }
        return read;
    }

    /** What a finished task came to: hours over quantity. The quantity must be above zero. */
    public static UnitHours observed(Hours hours, Quantity quantity) {
        if (quantity.amount().signum() <= 0) {
            throw new Refused("quantity", "Hours per unit need a quantity above zero.");
        }
        BigDecimal sixty = BigDecimal.valueOf(60);
        return new UnitHours(
                BigDecimal.valueOf(hours.minutes()).divide(sixty.multiply(quantity.amount()), MathContext.DECIMAL64));
    }

    /** Quantity x hours per unit in whole minutes, rounded half up; nothing for nothing. */
    public Hours times(Quantity quantity) {
        BigDecimal hours = amount.multiply(quantity.amount());
        if (hours.abs().compareTo(BigDecimal.valueOf(10_000_000)) > 0) {
            throw new Refused("quantity", "That comes to more hours than can be kept here.");
        }
        return Hours.of(hours);
    }

    /** The same labour for the other unit: hours per linear foot become hours per linear metre. */
    public UnitHours convert(Unit from, Unit to) {
        if (from == to) {
            return this;
        }
        if (from.counterpart() != to) {
            throw new Refused("unit", "Cannot turn hours per " + from.code() + " into hours per " + to.code() + ".");
        }
        return new UnitHours(to.toCounterpart(amount));
    }

    @Override
    public int compareTo(UnitHours other) {
        return amount.compareTo(other.amount);
    }

    /** At least two places: {@code 1.50}, {@code 0.014}. */
    @Override
    public String toString() {
        BigDecimal plain = Decimals.plain(amount);
        return (plain.scale() < 2 ? plain.setScale(2) : plain).toPlainString();
    }
}
