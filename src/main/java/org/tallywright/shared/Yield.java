package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** The quantity in the finished work over the quantity bought for it: above 0, at most 1, to four places. */
public record Yield(BigDecimal amount) implements Comparable<Yield> {
    public static final Yield ALL = new Yield(BigDecimal.ONE);

    public Yield {
        amount = Decimals.plain(amount.setScale(4, RoundingMode.HALF_UP));
        if (amount.signum() <= 0 || amount.compareTo(BigDecimal.ONE) > 0) {
            throw new NotUnderstood("A yield is above 0 and at most 1 (100 %).");
        }
    }

    public static Yield of(BigDecimal amount) {
        return new Yield(amount);
    }

    /** Reads {@code 0.85}, {@code 85 %} and {@code 85}; a bare number above 1 is a percentage. */
    public static Yield of(String typed) {
        String tidy = Decimals.tidy(typed);
        String bare = tidy.replaceFirst(" ?(?:%|percent)$", "");
        BigDecimal number = Decimals.read(bare);
        if (number == null) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is not a yield; write it like 0.85 or 85 %.");
        }
        boolean percent = !bare.equals(tidy) || number.compareTo(BigDecimal.ONE) > 0;
        return new Yield(percent ? number.movePointLeft(2) : number);
    }

    /**
     * What a job came to.
     *
     * @throws Refused where more is in the work than was bought, or nothing was bought
     */
    public static Yield observed(NetQuantity net, GrossQuantity gross) {
        BigDecimal bought = gross.quantity().amount();
        BigDecimal used = net.quantity().amount();
        if (bought.signum() <= 0 || used.signum() <= 0 || used.compareTo(bought) > 0) {
            throw new Refused(
                    "quantity", "More is in the work than was bought, or nothing was; check the two figures.");
        }
        BigDecimal share = used.divide(bought, MathContext.DECIMAL64);
        return new Yield(share.max(new BigDecimal("0.0001")));
    }

    Quantity grossFor(Quantity net) {
        return new Quantity(net.amount().divide(amount, MathContext.DECIMAL128));
    }

    public Percent percent() {
        return Percent.ofFraction(amount);
    }

    @Override
    public int compareTo(Yield other) {
        return amount.compareTo(other.amount);
    }

    @Override
    public String toString() {
        return amount.toPlainString();
    }
}
