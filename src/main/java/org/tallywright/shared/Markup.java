package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;

/** Profit as a share of the <em>cost</em>, above -100 %. Never to be mixed with {@link Margin}. */
public record Markup(Percent percent) implements Comparable<Markup> {
    public Markup {
        if (percent.fraction().compareTo(BigDecimal.ONE.negate()) <= 0) {
            throw new NotUnderstood("A markup stays above -100 % of the cost.");
        }
    }

    public static Markup of(String typed) {
        return new Markup(Percent.of(typed));
    }

    public static Markup of(BigDecimal percent) {
        return new Markup(new Percent(percent));
    }

    /** (price - cost) / cost; the cost must be above zero. */
    public static Markup between(Money cost, Money price) {
        if (!cost.isPositive()) {
            throw new Refused("cost", "A markup needs a cost above zero.");
        }
        return new Markup(Percent.ofFraction(price.minus(cost).amount().divide(cost.amount(), MathContext.DECIMAL64)));
    }

    /** cost x (1 + markup), to the cent. */
    public Money priceFrom(Money cost) {
        return cost.times(onTop());
    }

    /** markup / (1 + markup). */
    public Margin toMargin() {
        return new Margin(Percent.ofFraction(percent.fraction().divide(onTop(), MathContext.DECIMAL128)));
    }

    private BigDecimal onTop() {
        return BigDecimal.ONE.add(percent.fraction());
    }

    @Override
    public int compareTo(Markup other) {
        return percent.compareTo(other.percent);
    }

    @Override
    public String toString() {
        return percent.toString();
    }
}
