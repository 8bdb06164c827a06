package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** The price of one unit in the shop's currency, to four places, never negative. */
public record UnitPrice(BigDecimal amount) implements Comparable<UnitPrice> {
    public static final UnitPrice ZERO = new UnitPrice(BigDecimal.ZERO);
    private static final BigDecimal MOST = new BigDecimal("9999999999");

    public UnitPrice {
        amount = amount.setScale(4, RoundingMode.HALF_EVEN);
        if (amount.signum() < 0) {
            throw new NotUnderstood("A unit price cannot be negative.");
        }
    }

    public static UnitPrice of(BigDecimal amount) {
        return new UnitPrice(amount);
    }

    public static UnitPrice of(Money money) {
        return new UnitPrice(money.amount());
    }

    /** Reads {@code 13.40}, {@code $0.0125} or {@code 13,40}. */
    public static UnitPrice of(String typed) {
        String bare = Decimals.tidy(typed).replaceFirst("^\\p{Sc} ?", "").replaceFirst(" ?\\p{Sc}$", "");
        BigDecimal number = Decimals.read(bare);
        if (number == null) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is not a price; write it like 13.40.");
        }
        if (Decimals.plain(number).scale() > 4) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" has more than four places.");
        }
        if (number.compareTo(MOST) > 0) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is more than can be kept here.");
        }
        return new UnitPrice(number);
    }

    /** The amount for so many units, rounded to the cent. */
    public Money times(Quantity quantity) {
        return new Money(amount.multiply(quantity.amount()));
    }

    /** The amount for hours at this price per hour, rounded to the cent once. */
    public Money times(Hours hours) {
        return new Money(amount.multiply(BigDecimal.valueOf(hours.minutes()))
                .divide(BigDecimal.valueOf(60), 12, RoundingMode.HALF_EVEN));
    }

    @Override
    public int compareTo(UnitPrice other) {
        return amount.compareTo(other.amount);
    }

    @Override
    public String toString() {
        return amount.toPlainString();
    }
}
