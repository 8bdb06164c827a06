package org.tallywright.calibration.engine;

import java.util.Map;

/**
 * The hours of one finished job, split by whether an estimate line named them.
 *
 * @param job key of the job
 * @param lineHours person-hours on tasks of the estimate
 * @param otherHours person-hours on no estimate line, by hour class (rework, travel, standby ...)
 */
public record JobHours(String job, double lineHours, Map<String, Double> otherHours) {

    public JobHours {
        otherHours = Map.copyOf(otherHours);
    }

    double share() {
        return otherHours.values().stream().mapToDouble(Double::doubleValue).sum() / lineHours;
    }
}
