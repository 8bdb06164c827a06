package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;

/** Profit as a share of the <em>price</em>, below 100 %. A loss is negative. Never to be mixed with {@link Markup}. */
public record Margin(Percent percent) implements Comparable<Margin> {
    public Margin {
        if (percent.fraction().compareTo(BigDecimal.ONE) >= 0) {
            throw new NotUnderstood("A margin stays below 100 % of the price.");
        }
    }

    public static Margin of(String typed) {
        return new Margin(Percent.of(typed));
    }

    public static Margin of(BigDecimal percent) {
        return new Margin(new Percent(percent));
    }

    /** (price - cost) / price; the price must be above zero. */
    public static Margin between(Money cost, Money price) {
        if (!price.isPositive()) {
            throw new Refused("price", "A margin needs a price above zero.");
        }
        return new Margin(Percent.ofFraction(price.minus(cost).amount().divide(price.amount(), MathContext.DECIMAL64)));
    }

    /** cost / (1 - margin), to the cent. */
    public Money priceFrom(Money cost) {
        return new Money(cost.amount().divide(rest(), MathContext.DECIMAL128));
    }

    /** margin / (1 - margin). */
    public Markup toMarkup() {
        return new Markup(Percent.ofFraction(percent.fraction().divide(rest(), MathContext.DECIMAL128)));
    }

    private BigDecimal rest() {
        return BigDecimal.ONE.subtract(percent.fraction());
    }

    @Override
    public int compareTo(Margin other) {
        return percent.compareTo(other.percent);
    }

    @Override
    public String toString() {
        return percent.toString();
    }
}
