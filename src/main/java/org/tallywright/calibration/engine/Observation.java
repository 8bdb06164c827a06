package org.tallywright.calibration.engine;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A finished task of the past, as the engine learns from it.
 *
 * @param task key of the task, to name it when it is left out
 * @param job key of the job; tasks of one job share its effect
 * @param kind key of the task kind; a rename changes the name, not the key
 * @param workers who did it, by share of hours; empty where unknown
 * @param quantity what was really done, in the kind's unit (the confirmed quantity where there is one)
 * @param startingUnitHours the starting rate in person-hours per unit, never the rate that was bid: learning is always
 *     against the starting one
 * @param actualHours person-hours logged on the task as direct work, set-up and clean-up; rework, call-backs, travel and the other
 *     hour classes are kept out of the rate (see {@link HoursOnNoLine})
 * @param done the day it was finished
 * @param conditions site conditions that held, such as "occupied home"
 * @param shownHours the estimate that stood beside the task while it was worked on; null where none was kept
 */
public record Observation(
        String task,
        String job,
        String kind,
        List<WorkerShare> workers,
        double quantity,
        double startingUnitHours,
        double actualHours,
        LocalDate done,
        Set<String> conditions,
        @Nullable Double shownHours) {

    public Observation {
        workers = List.copyOf(workers);
        conditions = Set.copyOf(conditions);
    }

    /** Without an estimate of its own: what was shown is quantity x starting rate. */
    public Observation(
            String task,
            String job,
            String kind,
            List<WorkerShare> workers,
            double quantity,
            double startingUnitHours,
            double actualHours,
            LocalDate done,
            Set<String> conditions) {
        this(task, job, kind, workers, quantity, startingUnitHours, actualHours, done, conditions, null);
    }

    /** Estimated person-hours at the starting rate. */
    public double estimateHours() {
        return quantity * startingUnitHours;
    }

    /** Person-hours that the people saw as the estimate. */
    double shownEstimate() {
        return shownHours == null ? estimateHours() : shownHours;
    }

    /** The same past under another starting rate: used when a calibrated rate becomes the new starting rate. */
    public Observation rebased(double factor) {
        return new Observation(
                task,
                job,
                kind,
                workers,
                quantity,
                startingUnitHours * factor,
                actualHours,
                done,
                conditions,
                shownHours);
    }

    /** The same past under another kind: used when two kinds are merged. */
    public Observation ofKind(String other) {
        return new Observation(
                task, job, other, workers, quantity, startingUnitHours, actualHours, done, conditions, shownHours);
    }
}
