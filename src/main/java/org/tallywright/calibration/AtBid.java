package org.tallywright.calibration;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What was said of a finished job on the day its accepted bid was issued, as it was kept then, and what came of it.
 *
 * @param hours as said, less the share that was dropped
 * @param probability where the real hours fell in it before the record widened it, 0 to 1
 * @param actual all hours of the job but those on tasks of accepted change orders, which the bid did not speak of, and on dropped
 *     ones, which it spoke of in vain
 * @param dropped null where nothing was
 */
record AtBid(
        LocalDate on,
        HoursRange hours,
        double probability,
        double actual,
        @Nullable Dropped dropped) {
    /**
     * Tasks of the bid that were dropped afterwards.
     *
     * @param share of the bid's hours at the starting rates, 0 to 1
     */
    record Dropped(int tasks, double share) {}

    boolean inside() {
        return hours.holds(actual);
    }
}
