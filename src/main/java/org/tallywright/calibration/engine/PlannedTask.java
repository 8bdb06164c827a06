package org.tallywright.calibration.engine;

import java.util.List;
import java.util.Set;

/**
 * A task whose hours are to be forecast.
 *
 * @param key names the task within its job; it keeps its random numbers while others are edited
 * @param kind key of the task kind, known or new
 * @param workers who will do it, by share; empty = not yet known, treated as somebody new
 * @param estimateHours person-hours at the starting rate, quantity x starting unit hours; 0 gives 0 hours
 * @param conditions site conditions expected
 */
public record PlannedTask(
        String key, String kind, List<WorkerShare> workers, double estimateHours, Set<String> conditions) {

    public PlannedTask {
        if (!(estimateHours >= 0) || Double.isInfinite(estimateHours)) {
            throw new IllegalArgumentException("estimated hours must be 0 or more, not " + estimateHours);
        }
        workers = List.copyOf(workers);
        conditions = Set.copyOf(conditions);
    }

    public static PlannedTask of(String key, String kind, double estimateHours) {
        return new PlannedTask(key, kind, List.of(), estimateHours, Set.of());
    }

    public PlannedTask by(String worker) {
        return new PlannedTask(key, kind, WorkerShare.alone(worker), estimateHours, conditions);
    }
}
