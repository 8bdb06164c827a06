package org.tallywright.calibration.engine;

/**
 * The figures of a fit, on the scale of ln(actual/estimate): 0.10 is about 10 %.
 *
 * @param tasks finished tasks learnt from
 * @param level common level at an estimate of e^2 = 7.4 hours
 * @param slope change of the level per unit of ln(estimate); negative = small tasks run over more
 * @param residualSd sd between like tasks
 * @param kindSd sd between kinds
 * @param workerSd sd between people
 * @param jobSd sd between jobs
 * @param logPosterior log posterior density of the sds, up to a constant
 */
public record ModelFigures(
        int tasks,
        double level,
        double slope,
        double residualSd,
        double kindSd,
        double workerSd,
        double jobSd,
        double logPosterior) {}
