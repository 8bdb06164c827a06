package org.tallywright.calibration.engine.model;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Erf;

/**
 * Standard normal distribution: fast values from a table, exact ones from the library.
 *
 * <p>{@link #cdf} interpolates Hipparchus' values on a grid of 1/128 by cubic Hermite polynomials with the exact density
 * as slope; its error is below 1e-10 (tested). Beyond 8.5 it is 0 or 1. {@link #upperTail} is exact to about z = 37.
 */
public final class NormalTable {

    /** Quantiles kept of every distribution of hours: at (m - 0.5)/200, m = 1 .. 200. */
    public static final int QUANTILES = 200;

    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
    private static final double REACH = 8.5;
    private static final int PER_UNIT = 128;
    private static final int CELLS = (int) (2 * REACH * PER_UNIT);
    private static final double[] CDF = new double[CELLS + 1];
    private static final double[] DENSITY = new double[CELLS + 1];
    private static final double[] SCORES = scores(QUANTILES);

    static {
        for (int k = 0; k <= CELLS; k++) {
            double z = k / (double) PER_UNIT - REACH;
            CDF[k] = NORMAL.cumulativeProbability(z);
            DENSITY[k] = NORMAL.density(z);
        }
    }

    private NormalTable() {}

    /** P(Z &lt;= z). */
    public static double cdf(double z) {
        if (z <= -REACH) {
            return 0;
        }
        if (z >= REACH) {
            return 1;
        }
        double at = (z + REACH) * PER_UNIT;
        int k = Math.min(CELLS - 1, (int) at);
        double t = at - k;
        double rest = 1 - t;
        return CDF[k] * rest * rest * (1 + 2 * t)
                + CDF[k + 1] * t * t * (3 - 2 * t)
                + (DENSITY[k] * t * rest * rest - DENSITY[k + 1] * t * t * rest) / PER_UNIT;
    }

    /** Density at z. */
    public static double density(double z) {
        return Math.exp(-z * z / 2) * 0.3989422804014327;
    }

    /** P(Z &gt; z) without cancellation, above 0 up to about z = 37. */
    public static double upperTail(double z) {
        return Erf.erfc(z / Math.sqrt(2)) / 2;
    }

    /** Inverse of the distribution function, p strictly between 0 and 1. */
    public static double quantile(double p) {
        return NORMAL.inverseCumulativeProbability(p);
    }

    /** The z of the m-th kept quantile, m = 0 .. 199: quantile((m + 0.5)/200). */
    public static double score(int m) {
        return SCORES[m];
    }

    static double[] scores(int count) {
        double[] scores = new double[count];
        for (int m = 0; m < count; m++) {
            scores[m] = NORMAL.inverseCumulativeProbability((m + 0.5) / count);
        }
        return scores;
    }
}
