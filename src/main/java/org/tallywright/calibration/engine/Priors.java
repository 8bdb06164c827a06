package org.tallywright.calibration.engine;

import org.tallywright.calibration.engine.model.LogSdPrior;

/**
 * What is believed before the shop has any history, on the scale of ln(actual/estimate).
 *
 * <p>No source gives these for carpentry: they are plausible values, measured only on software tasks and one person's log
 * (see src/docs/calibration.md), and the data replace them within a few dozen tasks.
 *
 * @param level prior mean of the common level; 0.15 = people take 16 % longer than they estimate
 * @param levelSd its sd
 * @param slopeSd sd of the slope on ln(estimate), mean 0; the slope is the small-quantity effect
 * @param conditionSd sd of each site condition's effect, mean 0
 * @param residual prior of the sd between like tasks
 * @param kind prior of the sd between task kinds
 * @param worker prior of the sd between people
 * @param job prior of the sd between jobs
 */
public record Priors(
        double level,
        double levelSd,
        double slopeSd,
        double conditionSd,
        LogSdPrior residual,
        LogSdPrior kind,
        LogSdPrior worker,
        LogSdPrior job) {

    /** The starting beliefs of a shop's hours. */
    public static Priors ofHours() {
        return new Priors(
                0.15,
                0.30,
                0.15,
                0.15,
                LogSdPrior.around(0.40, 0.5),
                LogSdPrior.around(0.15, 0.7),
                LogSdPrior.around(0.10, 0.7),
                LogSdPrior.around(0.15, 0.7));
    }

    /** The starting beliefs of a material's yield against its starting value: closer, and not pessimistic. */
    public static Priors ofYields() {
        return new Priors(
                0,
                0.08,
                0.05,
                0.05,
                LogSdPrior.around(0.10, 0.5),
                LogSdPrior.around(0.06, 0.7),
                LogSdPrior.around(0.04, 0.7),
                LogSdPrior.around(0.05, 0.7));
    }

    /** Nearly flat, which makes the fit one of restricted maximum likelihood. */
    public static Priors nearFlat() {
        LogSdPrior flat = new LogSdPrior(-1, 1000);
        return new Priors(0, 1000, 1000, 1000, flat, flat, flat, flat);
    }
}
