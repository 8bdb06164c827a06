package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A count or measure of something in a {@link Unit} named elsewhere, to four places. Differences may be negative. */
public record Quantity(BigDecimal amount) implements Comparable<Quantity> {
    public static final Quantity ZERO = new Quantity(BigDecimal.ZERO);
    public static final Quantity ONE = new Quantity(BigDecimal.ONE);
    private static final BigDecimal MOST = new BigDecimal("1000000");

    public Quantity {
        amount = Decimals.plain(amount.setScale(4, RoundingMode.HALF_UP));
    }

    public static Quantity of(BigDecimal amount) {
        return new Quantity(amount);
    }

    public static Quantity of(long amount) {
        return new Quantity(BigDecimal.valueOf(amount));
    }

    /**
     * Reads {@code 12}, {@code 12.5}, {@code 12,5}, {@code 1,250} and {@code 12 1/2}; nothing negative.
     *
     * @throws NotUnderstood with a sentence for the person who typed it
     */
    public static Quantity of(String typed) {
        String tidy = Decimals.tidy(typed);
        if (tidy.startsWith("-")) {
            throw new NotUnderstood("A quantity cannot be negative.");
        }
        BigDecimal number = Decimals.readMixed(tidy);
        if (number == null) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is not a quantity; write it like 12 or 12.5.");
        }
        if (number.compareTo(MOST) > 0) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is more than can be kept here.");
        }
        return new Quantity(number);
    }

    public Quantity plus(Quantity other) {
        return new Quantity(amount.add(other.amount));
    }

    public Quantity minus(Quantity other) {
        return new Quantity(amount.subtract(other.amount));
    }

    public Quantity times(BigDecimal factor) {
        return new Quantity(amount.multiply(factor));
    }

    public boolean isZero() {
        return amount.signum() == 0;
    }

    public boolean isNegative() {
        return amount.signum() < 0;
    }

    /** The next whole number up, for things bought whole. */
    public Quantity wholeUp() {
        return new Quantity(amount.setScale(0, RoundingMode.CEILING));
    }

    /**
     * The same quantity in another unit, rounded to four places.
     *
     * @throws Refused where the two do not measure the same thing
     */
    public Quantity convert(Unit from, Unit to) {
        if (from == to) {
            return this;
        }
        if (from.counterpart() != to) {
            throw new Refused("unit", "Cannot turn " + from.code() + " into " + to.code() + ".");
        }
        return new Quantity(from.toCounterpart(amount));
    }

    @Override
    public int compareTo(Quantity other) {
        return amount.compareTo(other.amount);
    }

    @Override
    public String toString() {
        return amount.toPlainString();
    }
}
