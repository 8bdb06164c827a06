package org.tallywright.calibration.engine;

/**
 * The hours one task will really take.
 *
 * @param hours person-hours
 * @param observations finished tasks of the same kind the calibration learnt from
 * @param similarTasks what the similar past tasks are worth, in tasks just like this one
 * @param startingShare how much of the forecast is still the starting rate: 1 with no history, towards 0 with much
 */
public record TaskForecast(Distribution hours, int observations, double similarTasks, double startingShare) {}
