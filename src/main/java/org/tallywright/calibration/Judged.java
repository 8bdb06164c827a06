package org.tallywright.calibration;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.engine.PastForecast;

/**
 * A finished job beside what would have been said of it from the jobs that were closed before it was accepted.
 *
 * @param knownJobs finished jobs that were known then
 * @param knownTasks their finished tasks
 * @param estimate person-hours at the starting rates
 * @param hours what would have been said of all its hours
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
        @Nullable BigDecimal labourRate,
        @Nullable AtBid atBid,
        List<AtStage> atStages) {

    /** One kept before forecasts were judged has none. */
    Judged {
        atStages = atStages == null ? List.of() : List.copyOf(atStages);
    }

    /** Where the real hours fell in what was said: in the bid's own forecast where one was kept, else looking back. */
    List<PastForecast> forecasts() {
        List<PastForecast> all = new ArrayList<>();
        all.add(new PastForecast(PastForecast.Stage.AT_BID, atBid == null ? probability : atBid.probability()));
        atStages.forEach(stage -> all.add(stage.forecast()));
        return all;
    }

    boolean inside() {
        return hours.holds(actual);
    }
}
