package org.tallywright.shared;

import java.math.BigDecimal;

/**
 * Where a cost left its estimate. Positive is unfavourable: it cost more than estimated. Results are exact;
 * round by {@link Money} when shown. The formulas are the standard cost accounting ones; the
 * exercises they are checked against are named beside the tests.
 */
public final class Variances {
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
}
