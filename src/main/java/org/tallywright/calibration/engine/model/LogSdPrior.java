package org.tallywright.calibration.engine.model;

/**
 * Prior of one standard deviation: its natural logarithm is normal, ln sd ~ N(mean, spread^2).
 *
 * <p>The lognormal shape keeps the sd off zero, so the posterior has an interior mode for any number of observations.
 * A very large spread makes it near-flat, which gives restricted maximum likelihood.
 *
 * @param mean mean of ln sd (log ratio units)
 * @param spread sd of ln sd, above 0
 */
public record LogSdPrior(double mean, double spread) {

    public LogSdPrior {
        if (!(spread > 0)) {
            throw new IllegalArgumentException("the spread of a prior must be above zero, not " + spread);
        }
    }

    /** A prior centred on a standard deviation, for example {@code around(0.15, 0.7)}. */
    public static LogSdPrior around(double sd, double spread) {
        return new LogSdPrior(Math.log(sd), spread);
    }

    double curvature() {
        return 1 / (spread * spread);
    }

    double logDensity(double logSd) {
        double z = (logSd - mean) / spread;
        return -z * z / 2;
    }

    double slope(double logSd) {
        return -(logSd - mean) * curvature();
    }
}
