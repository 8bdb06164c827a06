package org.tallywright.takeoff.formula;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * An exact fraction with its kind: a number, a length, an area or a volume; lengths in units of 3.125 micrometres.
 *
 * @param power how often a length is in it: 0 for a number, 1 for a length, 2 for an area, 3 for a volume
 */
public record Amount(BigInteger top, BigInteger bottom, int power) implements Comparable<Amount> {
    static final int MOST_BITS = 512;
    public static final Amount ZERO = number(0);
    public static final Amount ONE = number(1);

    public Amount {
        if (bottom.signum() == 0) {
            throw new ArithmeticException("by nothing");
        }
        if (bottom.signum() < 0) {
            top = top.negate();
            bottom = bottom.negate();
        }
        BigInteger common = top.gcd(bottom);
        if (!common.equals(BigInteger.ONE) && common.signum() > 0) {
            top = top.divide(common);
            bottom = bottom.divide(common);
        }
        if (top.bitLength() > MOST_BITS || bottom.bitLength() > MOST_BITS) {
            throw new ArithmeticException("too large");
        }
    }

    public static Amount number(long number) {
        return new Amount(BigInteger.valueOf(number), BigInteger.ONE, 0);
    }

    public static Amount length(long units) {
        return new Amount(BigInteger.valueOf(units), BigInteger.ONE, 1);
    }

    static Amount of(BigDecimal value, int power) {
        BigDecimal plain = value.scale() < 0 ? value.setScale(0) : value;
        return new Amount(plain.unscaledValue(), BigInteger.TEN.pow(plain.scale()), power);
    }

    public Amount plus(Amount other) {
        return new Amount(
                top.multiply(other.bottom).add(other.top.multiply(bottom)), bottom.multiply(other.bottom), power);
    }

    public Amount negated() {
        return new Amount(top.negate(), bottom, power);
    }

    public Amount times(Amount other) {
        return new Amount(top.multiply(other.top), bottom.multiply(other.bottom), power + other.power);
    }

    public Amount over(Amount other) {
        return new Amount(top.multiply(other.bottom), bottom.multiply(other.top), power - other.power);
    }

    /** The nearest whole number, halves up; likewise up and down by the mode. */
    public BigInteger whole(RoundingMode mode) {
        return new BigDecimal(top).divide(new BigDecimal(bottom), 0, mode).toBigIntegerExact();
    }

    public int signum() {
        return top.signum();
    }

    /** In whatever a unit of that power is: units to the power. */
    public BigDecimal decimal() {
        return new BigDecimal(top).divide(new BigDecimal(bottom), MathContext.DECIMAL128);
    }

    @Override
    public int compareTo(Amount other) {
        return top.multiply(other.bottom).compareTo(other.top.multiply(bottom));
    }

    /** What it is, in words. */
    public String kind() {
        return kind(power);
    }

    static String kind(int power) {
        return switch (power) {
            case 0 -> "a number";
            case 1 -> "a length";
            case 2 -> "an area";
            case 3 -> "a volume";
            default -> "no number, length, area or volume";
        };
    }
}
