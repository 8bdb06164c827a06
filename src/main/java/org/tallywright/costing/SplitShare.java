package org.tallywright.costing;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What one task or material adds to a cause.
 *
 * @param amount shop's currency, to the cent; positive: it cost more
 * @param minutes the same in whole minutes, where the cause is one of hours
 */
public record SplitShare(
        Cause cause,
        SplitSource source,
        BigDecimal amount,
        @Nullable Integer minutes) {}
