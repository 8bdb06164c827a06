package org.tallywright.calibration.engine;

import java.util.List;

/**
 * Where a running job will end.
 *
 * @param atCompletion all person-hours of the job when it is finished
 * @param remaining person-hours still to come, beyond everything logged so far
 * @param unwidenedRemaining the same before the shop's own record widened and moved it; this is the one to store and to judge later
 * @param hoursSoFar person-hours logged so far
 * @param shareDone share of the estimated hours that finished tasks hold, 0 to 1
 * @param pace how this job runs against what its tasks alone would say: 1.12 = 12 % over, learnt from its finished tasks
 * @param openTasks all person-hours of each open task when it is finished, in the order asked; never below what is logged
 */
public record RunningForecast(
        Distribution atCompletion,
        Distribution remaining,
        Distribution unwidenedRemaining,
        double hoursSoFar,
        double shareDone,
        double pace,
        List<Distribution> openTasks) {}
