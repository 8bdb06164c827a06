package org.tallywright.calibration.engine;

/**
 * A task of a running job that is not finished.
 *
 * @param task what is planned
 * @param loggedHours person-hours logged on it so far; it cannot end below them
 */
public record RunningTask(PlannedTask task, double loggedHours) {

    public RunningTask {
        if (!(loggedHours >= 0)) {
            throw new IllegalArgumentException("logged hours must be 0 or more, not " + loggedHours);
        }
    }
}
