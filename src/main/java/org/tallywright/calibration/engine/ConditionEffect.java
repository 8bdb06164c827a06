package org.tallywright.calibration.engine;

/**
 * What a site condition does to hours, all else equal: the factor exp(effect) on ln(actual/estimate), shrunk to 1.
 *
 * @param counts whether there is enough history; if not, forecasts leave it out and the factors say what is believed before any
 * @param tasks finished tasks under it
 * @param jobs they were done on
 * @param otherTasks finished tasks without it
 * @param otherJobs they were done on
 * @param low lower end of the central 80 % range of the factor
 * @param median middle of it
 * @param high upper end of it
 */
public record ConditionEffect(
        String condition,
        boolean counts,
        int tasks,
        int jobs,
        int otherTasks,
        int otherJobs,
        double low,
        double median,
        double high) {}
