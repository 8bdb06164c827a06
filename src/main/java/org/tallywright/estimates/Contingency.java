package org.tallywright.estimates;

import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/**
 * What is added to the expected cost for what no line names. In general it is the cost at the chosen confidence less the
 * expected cost, so nothing at the mean; a fitted distribution of the cost is one more implementation of this.
 */
@FunctionalInterface
public interface Contingency {
    Contingency NONE = expected -> Money.ZERO;

    Money on(Money expectedCost);

    /** A percentage of the expected cost that the shop chose and named. */
    static Contingency named(Percent percent) {
        return expected -> expected.times(percent);
    }

    /** Up to the cost that is not passed at the chosen confidence. Never negative. */
    static Contingency upTo(Money costAtConfidence) {
        return expected -> {
            Money more = costAtConfidence.minus(expected);
            return more.isNegative() ? Money.ZERO : more;
        };
    }
}
