package org.tallywright.costing;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * One cause of the difference to the plan.
 *
 * @param amount shop's currency, to the cent; positive: it cost more
 * @param minutes the same in whole minutes, where the cause is one of hours
 */
public record SplitLine(
        Cause cause, BigDecimal amount, @Nullable Integer minutes) {}
