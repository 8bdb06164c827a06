package org.tallywright.calibration;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.engine.PastForecast;

/**
 * What was said of a finished job when a quarter, a half or three quarters of it was done, as it was kept then, and what came
 * of it.
 *
 * @param percent 25, 50 or 75
 * @param soFar hours logged by then; null in one kept before that was kept
 * @param atEnd all hours at the end, as said
 * @param probability where the hours still taken fell in what was said of them before the record corrected it, 0 to 1
 * @param actual all hours of the job but those on tasks of change orders that came later
 */
record AtStage(int percent, LocalDate on, @Nullable Double soFar, HoursRange atEnd, double probability, double actual) {
    PastForecast forecast() {
        return new PastForecast(PastForecast.Stage.of(percent / 100.0), probability);
    }
}
