package org.tallywright.bench.calibration;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;
import org.tallywright.calibration.engine.WorkerShare;

/**
 * One row of a benchmark file.
 *
 * @param estimated day of the estimate, or of the start
 * @param known day the actual hours became known
 */
record PastTask(
        String id,
        LocalDate estimated,
        String job,
        String kind,
        String worker,
        double quantity,
        double estimate,
        double actual,
        LocalDate known) {

    boolean usable() {
        return estimate > 0 && actual > 0 && !Double.isInfinite(estimate) && !Double.isInfinite(actual);
    }

    private List<WorkerShare> workers() {
        return worker.isBlank() ? List.of() : WorkerShare.alone(worker);
    }

    Observation observation() {
        return new Observation(id, job, kind, workers(), quantity, estimate / quantity, actual, known, Set.of());
    }

    PlannedTask planned() {
        return new PlannedTask(id, kind, workers(), estimate, Set.of());
    }
}
