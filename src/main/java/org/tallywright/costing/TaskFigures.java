package org.tallywright.costing;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One task beside its estimate. Quantities in {@code unit}, labour in the shop's currency.
 *
 * @param state offered, planned, started, done or dropped
 * @param planned what the accepted bids say of it (where none is accepted, its own estimate); null: on no estimate line
 * @param quantityDone null until it is done; nothing for a dropped one
 * @param rateMinutes of the hour classes that count in a rate
 * @param otherMinutes rework, call-back and standby
 */
public record TaskFigures(
        UUID taskId,
        String name,
        String piece,
        String stage,
        String unit,
        String state,
        @Nullable Planned planned,
        @Nullable BigDecimal quantityDone,
        boolean quantityConfirmed,
        int rateMinutes,
        int otherMinutes,
        BigDecimal labour)
        implements SplitSource {

    /** @param labour minutes at the rate of the bid, not rounded; null where there is no rate to plan with */
    public record Planned(
            int minutes, BigDecimal quantity, @Nullable BigDecimal labour) {}

    public int minutes() {
        return rateMinutes + otherMinutes;
    }

    /** Nothing more will be logged on it, as far as anybody says. */
    public boolean settled() {
        return state.equals("done") || state.equals("dropped");
    }

    /** Planned minutes that are not logged yet; none once it is settled or past its estimate. */
    public int remainingMinutes() {
        Planned plan = planned;
        return settled() || plan == null ? 0 : Math.max(0, plan.minutes() - minutes());
    }
}
