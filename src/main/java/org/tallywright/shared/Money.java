package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * An amount in the shop's one currency, to the cent. Rounding (half to even) happens here and nowhere else; sums are
 * exact. A negative amount is a credit or a loss. Ten thousand million and more is refused ({@link Refused}).
 */
public record Money(BigDecimal amount) implements Comparable<Money> {
    // What numeric(12,2) holds; stands before ZERO because the constructor needs it.
    private static final BigDecimal MOST = new BigDecimal("9999999999.99");
    public static final Money ZERO = new Money(BigDecimal.ZERO);

    public Money {
        amount = amount.setScale(2, RoundingMode.HALF_EVEN);
        if (amount.abs().compareTo(MOST) > 0) {
            throw new Refused("That comes to more money than can be kept here.");
        }
    }

    public static Money of(BigDecimal amount) {
        return new Money(amount);
    }

    public static Money of(long whole) {
        return new Money(BigDecimal.valueOf(whole));
    }

    public static Money ofCents(long cents) {
        return new Money(BigDecimal.valueOf(cents, 2));
    }

    /**
     * Reads {@code 9,413.50}, {@code $9,413.50}, {@code 9413.5}, {@code 9 413,50}, {@code -12} and {@code (12.00)}.
     *
     * @throws NotUnderstood with a sentence for the person who typed it
     */
    public static Money of(String typed) {
        String tidy = Decimals.tidy(typed);
        boolean bracketed = tidy.startsWith("(") && tidy.endsWith(")") && tidy.length() > 2;
        String signed = bracketed ? tidy.substring(1, tidy.length() - 1).strip() : tidy;
        String bare = signed.replaceFirst("^(-?) ?\\p{Sc}? ?(-?)", "$1$2").replaceFirst(" ?\\p{Sc}$", "");
        boolean negative = bare.startsWith("-");
        BigDecimal number = Decimals.read(negative ? bare.substring(1).strip() : bare);
        if (tidy.isEmpty()) {
            throw new NotUnderstood("Write an amount, such as 9,413.50.");
        }
        if (number == null || negative && bracketed) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is not an amount; write it like 9,413.50.");
        }
        if (Decimals.plain(number).scale() > 2) {
            throw new NotUnderstood(
                    "\"" + Decimals.shown(typed) + "\" has more than two places; an amount goes to the cent.");
        }
        if (number.compareTo(MOST) > 0) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is more than can be kept here.");
        }
        return new Money(negative || bracketed ? number.negate() : number);
    }

    public Money plus(Money other) {
        return new Money(amount.add(other.amount));
    }

    public Money minus(Money other) {
        return new Money(amount.subtract(other.amount));
    }

    /** Rounded to the cent, half to even. */
    public Money times(BigDecimal factor) {
        return new Money(amount.multiply(factor));
    }

    public Money times(Percent percent) {
        return times(percent.fraction());
    }

    public Money negate() {
        return new Money(amount.negate());
    }

    public Money abs() {
        return new Money(amount.abs());
    }

    public boolean isNegative() {
        return amount.signum() < 0;
    }

    public boolean isZero() {
        return amount.signum() == 0;
    }

    public boolean isPositive() {
        return amount.signum() > 0;
    }

    public static Money sum(Iterable<Money> amounts) {
        Money total = ZERO;
        for (Money each : amounts) {
            total = total.plus(each);
        }
        return total;
    }

    /**
     * Splits the amount in proportion to the weights so that the parts add up to it to the cent. Each part first gets
     * its share rounded towards zero; the cents left over go one each to the shares that lost most, earlier ones first.
     *
     * @param weights none negative, at least one above zero
     */
    public List<Money> allocate(int... weights) {
        long total = Arrays.stream(weights).asLongStream().sum();
        if (total <= 0 || Arrays.stream(weights).anyMatch(w -> w < 0)) {
            throw new IllegalArgumentException("Weights must not be negative and one must be above zero");
        }
        BigInteger cents = amount.unscaledValue().abs();
        BigInteger[] parts = new BigInteger[weights.length];
        BigInteger[] lost = new BigInteger[weights.length];
        BigInteger left = cents;
        for (int i = 0; i < weights.length; i++) {
            BigInteger[] share =
                    cents.multiply(BigInteger.valueOf(weights[i])).divideAndRemainder(BigInteger.valueOf(total));
            parts[i] = share[0];
            lost[i] = share[1];
            left = left.subtract(share[0]);
        }
        for (int cent = left.intValueExact(); cent > 0; cent--) {
            int most = largest(lost);
            parts[most] = parts[most].add(BigInteger.ONE);
            lost[most] = BigInteger.ONE.negate();
        }
        List<Money> shares = new ArrayList<>(parts.length);
        for (BigInteger part : parts) {
            shares.add(new Money(new BigDecimal(amount.signum() < 0 ? part.negate() : part, 2)));
        }
        return List.copyOf(shares);
    }

    private static int largest(BigInteger[] values) {
        int best = 0;
        for (int i = 1; i < values.length; i++) {
            best = values[i].compareTo(values[best]) > 0 ? i : best;
        }
        return best;
    }

    @Override
    public int compareTo(Money other) {
        return amount.compareTo(other.amount);
    }

    /** Grouped, without a currency sign: {@code 9,413.00}. Pages use {@link MoneyFormat}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%,.2f", amount);
    }
}
