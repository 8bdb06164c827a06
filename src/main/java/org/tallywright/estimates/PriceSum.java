package org.tallywright.estimates;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.UnitPrice;

/**
 * The price of a bid, by the one formula of the shop. Each line is rounded to the cent as it is computed and the lines
 * below are made from rounded lines, so that the printed lines always add up.
 *
 * <pre>
 * cost         = hours x labour rate + material + other + hours x overhead rate
 * contingency  = cost at the chosen confidence - cost, or a named percentage of cost
 * before       = (cost + contingency) / (1 - margin)
 * margin line  = before - cost - contingency
 * price        = before to the nearest rounding step; the difference is the rounding line
 * total        = price + price x tax
 * </pre>
 *
 * Price from margin is common practice in the trade (margin = markup / (1 + markup)).
 */
public record PriceSum(
        Money labour,
        Money material,
        Money other,
        Money overhead,
        Money contingency,
        Money margin,
        Money rounding,
        Money tax) {

    public static PriceSum of(PriceBasis basis) {
        Money labour = UnitPrice.of(basis.labourRate()).times(basis.hours());
        Money overhead = UnitPrice.of(basis.overheadRate()).times(basis.hours());
        Money cost = labour.plus(basis.material()).plus(basis.other()).plus(overhead);
        Money contingency = basis.contingency().on(cost);
        Money full = cost.plus(contingency);
        Money before = basis.margin().priceFrom(full);
        Money price = toStep(before, basis.roundingStep());
        return new PriceSum(
                labour,
                basis.material(),
                basis.other(),
                overhead,
                contingency,
                before.minus(full),
                price.minus(before),
                price.times(basis.tax()));
    }

    /** What the job is expected to cost the shop. */
    public Money cost() {
        return labour.plus(material).plus(other).plus(overhead);
    }

    public Money costWithContingency() {
        return cost().plus(contingency);
    }

    public Money beforeRounding() {
        return costWithContingency().plus(margin);
    }

    /** What is asked of the client, before tax. */
    public Money price() {
        return beforeRounding().plus(rounding);
    }

    public Money total() {
        return price().plus(tax);
    }

    /** What the price holds for a part of the cost: with its share of contingency and margin, before rounding and tax. */
    public Money asked(Money part) {
        return cost().isPositive()
                ? Money.of(part.amount()
                        .multiply(beforeRounding().amount())
                        .divide(cost().amount(), MathContext.DECIMAL128))
                : part;
    }

    /** Profit as a share of the rounded price, contingency counted as cost; nothing for a price of nothing. */
    public Margin keptMargin() {
        return price().isPositive() ? Margin.between(costWithContingency(), price()) : Margin.of(BigDecimal.ZERO);
    }

    /** The nearest multiple, halves up; a price that is more than nothing never becomes nothing. */
    private static Money toStep(Money price, Money step) {
        if (step.isZero() || !price.isPositive()) {
            return price;
        }
        BigDecimal steps = price.amount().divide(step.amount(), 0, RoundingMode.HALF_UP);
        return step.times(steps.max(BigDecimal.ONE));
    }
}
