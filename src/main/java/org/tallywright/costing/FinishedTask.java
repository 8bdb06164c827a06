package org.tallywright.costing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * What one finished task teaches: how long it took, and what the shop's starting rate would have said.
 *
 * @param unit of the quantity, which is what was really done
 * @param quantityConfirmed false: nobody counted, the estimate is taken
 * @param startingUnitHours hours per unit the catalogue started from when the task was made; never the rate that was bid
 * @param estimatedHours quantity x startingUnitHours
 * @param minutes person-minutes of the hour classes that count in a rate: no rework, call-back or standby
 * @param shares of the minutes by person; they add up to them
 * @param conditions of the site: occupied, out-of-square, stairs
 */
public record FinishedTask(
        UUID taskId,
        UUID jobId,
        UUID taskKindId,
        LocalDate doneOn,
        String unit,
        BigDecimal quantity,
        boolean quantityConfirmed,
        BigDecimal startingUnitHours,
        BigDecimal estimatedHours,
        int minutes,
        Map<UUID, Integer> shares,
        Set<String> conditions) {

    public FinishedTask {
        shares = Map.copyOf(shares);
        conditions = Set.copyOf(conditions);
    }
}
