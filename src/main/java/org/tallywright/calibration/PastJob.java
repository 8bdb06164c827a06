package org.tallywright.calibration;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.engine.PlannedTask;

/**
 * A finished job, all hours in person-hours.
 *
 * @param key the job's id, or import:batch:name
 * @param number of the job, or its name in the file
 * @param knownBy the day before which anything must have been known to help its bid: accepted, else opened
 * @param lines its tasks as they were planned; those dropped on the way are not among them
 * @param lineHours logged on those tasks, in the hour classes that belong to a rate
 * @param otherHours all other hours, by hour class
 * @param bidHours hours of the accepted bids, null without one
 * @param labourRate of the accepted bid
 * @param atBid what was kept of the accepted bid's forecast; null where none was kept
 * @param atStages what was kept of the way to the end
 */
record PastJob(
        String key,
        String number,
        String title,
        boolean imported,
        LocalDate knownBy,
        LocalDate closedOn,
        List<Line> lines,
        double lineHours,
        Map<String, Double> otherHours,
        @Nullable Double bidHours,
        @Nullable BigDecimal labourRate,
        @Nullable AtBid atBid,
        List<AtStage> atStages) {

    /** One kept before forecasts were judged has none. */
    PastJob {
        atStages = atStages == null ? List.of() : List.copyOf(atStages);
    }

    /**
     * @param estimate person-hours at the starting rate
     * @param rate that starting rate, in person-hours per unit; null in one kept before it was
     */
    record Line(
            String task,
            String kind,
            double estimate,
            @Nullable Double rate,
            Set<String> conditions) {
        PlannedTask planned(Map<String, Past.Rebase> changed) {
            Past.Rebase then = changed.get(kind);
            double factor = then == null || rate == null || rate != then.now() ? 1 : then.factor();
            return new PlannedTask(task, kind, List.of(), estimate * factor, conditions);
        }
    }

    /** At the starting rates of the calibration. */
    double estimate() {
        return lines.stream().mapToDouble(Line::estimate).sum();
    }

    double actual() {
        return lineHours
                + otherHours.values().stream().mapToDouble(Double::doubleValue).sum();
    }
}
