package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/**
 * Where a cost left its estimate. Positive is unfavourable: it cost more than estimated. Results are exact (mix and
 * yield to 34 digits); round by {@link Money} when shown. The formulas are the standard cost accounting ones; the
 * exercises they are checked against are named beside the tests.
 */
public final class Variances {
    private static final MathContext PRECISE = MathContext.DECIMAL128;

    private Variances() {}

    /** What was bought dearer: actual quantity x (actual price - estimated price). */
    public static BigDecimal price(BigDecimal actualQuantity, BigDecimal actualPrice, BigDecimal estimatedPrice) {
        return actualQuantity.multiply(actualPrice.subtract(estimatedPrice));
    }

    /** What was used beyond the estimate: (actual quantity - estimated quantity) x estimated price. */
    public static BigDecimal quantity(
            BigDecimal actualQuantity, BigDecimal estimatedQuantity, BigDecimal estimatedPrice) {
        return actualQuantity.subtract(estimatedQuantity).multiply(estimatedPrice);
    }

    /** What an hour cost more: actual hours x (actual rate - estimated rate). */
    public static BigDecimal rate(BigDecimal actualHours, BigDecimal actualRate, BigDecimal estimatedRate) {
        return price(actualHours, actualRate, estimatedRate);
    }

    /** What took longer: (actual hours - hours allowed for what was really done) x estimated rate. */
    public static BigDecimal efficiency(BigDecimal actualHours, BigDecimal allowedHours, BigDecimal estimatedRate) {
        return quantity(actualHours, allowedHours, estimatedRate);
    }

    /**
     * One ingredient of a mixture.
     *
     * @param used actual quantity
     * @param standardPart its part of the standard mix, in any unit shared by all ingredients
     * @param standardPrice price of one unit of quantity in the standard
     */
    public record Ingredient(BigDecimal used, BigDecimal standardPart, BigDecimal standardPrice) {}

    /** Too much of the dear one: sum of (used - used in all x standard share) x standard price. */
    public static BigDecimal mix(List<Ingredient> ingredients) {
        return usedAtStandardPrice(ingredients).subtract(usedAtStandardMix(ingredients));
    }

    /**
     * Too little out of what went in: the input at standard mix less what the output should have taken.
     *
     * @param output what was made
     * @param outputOfStandard what the standard parts make together, in the unit of the output
     */
    public static BigDecimal yield(List<Ingredient> ingredients, BigDecimal output, BigDecimal outputOfStandard) {
        BigDecimal standardCost = ingredients.stream()
                .map(i -> i.standardPart.multiply(i.standardPrice))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal allowed = standardCost.multiply(output).divide(outputOfStandard, PRECISE);
        return usedAtStandardMix(ingredients).subtract(allowed);
    }

    private static BigDecimal usedAtStandardPrice(List<Ingredient> ingredients) {
        return ingredients.stream().map(i -> i.used.multiply(i.standardPrice)).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static BigDecimal usedAtStandardMix(List<Ingredient> ingredients) {
        BigDecimal used = ingredients.stream().map(Ingredient::used).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal parts = ingredients.stream().map(Ingredient::standardPart).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal cost = ingredients.stream()
                .map(i -> i.standardPart.multiply(i.standardPrice))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        return cost.multiply(used).divide(parts, PRECISE);
    }
}
