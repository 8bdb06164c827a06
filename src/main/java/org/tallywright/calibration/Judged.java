package org.tallywright.calibration;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A finished job beside what would have been said of it from the jobs that were closed before it was accepted.
 *
 * @param knownJobs finished jobs that were known then
 * @param knownTasks their finished tasks
 * @param estimate person-hours at the starting rates
 * @param hours what was said of all its hours
 * @param probability where the real hours fell in it before the record widened it, 0 to 1
 */
record Judged(
        String key,
        String number,
        String title,
        boolean imported,
        LocalDate closedOn,
        int knownJobs,
        int knownTasks,
        double estimate,
        HoursRange hours,
        double probability,
        double actual,
        @Nullable Double bidHours,
        @Nullable BigDecimal labourRate) {

    boolean inside() {
        return actual >= hours.low() && actual <= hours.high();
    }

    boolean underP80() {
        return actual <= hours.p80();
    }
}
