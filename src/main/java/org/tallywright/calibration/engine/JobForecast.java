package org.tallywright.calibration.engine;

import java.util.List;

/**
 * The hours a whole job will really take, forecast before it starts.
 *
 * @param hours all person-hours, those on no estimate line included; its median is never the sum of the lines' medians
 * @param unwidened the same before the shop's own record widened it; this is the one to store and to judge later
 * @param draws the draws behind {@code hours}, to be added to other drawn amounts
 * @param lineHours person-hours of the tasks on the estimate alone; its mean is the sum of the tasks' means
 * @param tasks the forecast of each task, in the order asked
 * @param startingShare how much of it is still the starting rate, tasks weighted by their estimates
 */
public record JobForecast(
        Distribution hours,
        Distribution unwidened,
        Draws draws,
        Distribution lineHours,
        List<TaskForecast> tasks,
        double startingShare) {

    /** Fewest own observations behind any of its tasks, 0 where it has none. */
    public int fewestObservations() {
        return tasks.stream().mapToInt(TaskForecast::observations).min().orElse(0);
    }
}
