package org.tallywright.estimates;

import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * What is added to the expected cost: the cost at the chosen confidence less the expected cost, so nothing at the mean; or
 * a percentage for what no line names.
 */
@FunctionalInterface
public interface Contingency {
    Contingency NONE = expected -> Money.ZERO;

    Money on(Money expectedCost);

    /** A percentage of the expected cost that the shop chose and named. */
    static Contingency named(Percent percent) {
        return expected -> expected.times(percent);
    }

    /**
     * Up to the cost that is not passed at the chosen confidence. Below zero where that lies under the expected cost, as at P50:
     * now and then a job runs far over, which lifts the mean above the middle.
     */
    static Contingency upTo(Money costAtConfidence) {
        return costAtConfidence::minus;
    }
}
