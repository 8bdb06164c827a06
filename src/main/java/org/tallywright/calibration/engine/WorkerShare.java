package org.tallywright.calibration.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One person's part in a task. The worker effect enters by share of hours; hours themselves are person-hours.
 *
 * @param worker key of the person
 * @param share part of the task's hours, above 0 and up to 1; the shares of a task add up to 1
 */
public record WorkerShare(String worker, double share) {

    public WorkerShare {
        if (!(share > 0 && share <= 1 + 1e-9)) {
            throw new IllegalArgumentException("a share must lie between 0 and 1, not " + share);
        }
    }

    /** The one person on a task. */
    public static List<WorkerShare> alone(String worker) {
        return List.of(new WorkerShare(worker, 1));
    }

    /** Shares from logged hours; people without hours drop out, and nobody is left where nothing is logged. */
    public static List<WorkerShare> byHours(Map<String, Double> hours) {
        double total =
                hours.values().stream().filter(h -> h > 0).mapToDouble(h -> h).sum();
        List<WorkerShare> shares = new ArrayList<>();
        hours.forEach((worker, logged) -> {
            if (logged > 0) {
                shares.add(new WorkerShare(worker, logged / total));
            }
        });
        return List.copyOf(shares);
    }
}
