package org.tallywright.calibration.engine;

import java.util.List;

/**
 * A job under way.
 *
 * @param job key of the job
 * @param finished its finished tasks
 * @param open its other tasks
 * @param hoursOnNoLine person-hours logged so far on no estimate line (rework, travel, standby and the like)
 */
public record RunningJob(String job, List<Observation> finished, List<RunningTask> open, double hoursOnNoLine) {

    public RunningJob {
        finished = List.copyOf(finished);
        open = List.copyOf(open);
    }

    /** Share of the estimated hours that finished tasks hold, 0 to 1; 1 where nothing is open. */
    public double shareDone() {
        double done = finished.stream()
                .mapToDouble(Observation::estimateHours)
                .filter(h -> h > 0)
                .sum();
        double left = open.stream().mapToDouble(o -> o.task().estimateHours()).sum();
        return left <= 0 ? 1 : done / (done + left);
    }

    /** Person-hours logged so far, all of them. */
    public double hoursSoFar() {
        double done = finished.stream()
                .mapToDouble(Observation::actualHours)
                .filter(h -> h > 0)
                .sum();
        return done + open.stream().mapToDouble(RunningTask::loggedHours).sum() + hoursOnNoLine;
    }
}
