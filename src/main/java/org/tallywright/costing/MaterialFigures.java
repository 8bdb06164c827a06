package org.tallywright.costing;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One material beside its estimate, in its own unit; amounts in the shop's currency.
 *
 * @param materialId null for a line whose material was not in the catalogue
 * @param planned null: on no estimate line
 * @param charged bought for the job + from stock - sent back - kept
 * @param net in the finished work, null until somebody said so
 * @param cost purchases with freight and stock, less credits
 */
public record MaterialFigures(
        @Nullable UUID materialId,
        String name,
        String unit,
        @Nullable Planned planned,
        BigDecimal charged,
        @Nullable BigDecimal net,
        BigDecimal cost)
        implements SplitSource {

    /**
     * @param quantity to buy, in whole purchase units
     * @param amount quantity x price + freight
     */
    public record Planned(BigDecimal net, BigDecimal quantity, BigDecimal freight, BigDecimal amount) {}

    /** What is planned to be spent on it and is not spent yet; nothing once all that was planned is in the work. */
    public BigDecimal remaining() {
        Planned plan = planned;
        BigDecimal inTheWork = net;
        boolean all = plan != null && inTheWork != null && inTheWork.compareTo(plan.net()) >= 0;
        return plan == null || all
                ? BigDecimal.ZERO
                : plan.amount().subtract(cost).max(BigDecimal.ZERO);
    }
}
