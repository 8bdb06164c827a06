package org.tallywright.calibration.engine;

import java.util.Arrays;
import org.tallywright.calibration.engine.model.NormalTable;

/**
 * A distribution as 200 ascending quantiles at (m - 0.5)/200, m = 1 .. 200, of something that is never negative: person-hours
 * in forecasts of tasks and jobs, a ratio in yields. Immutable.
 *
 * <p>Quantiles between the kept ones are interpolated in a straight line; outside them the outermost is given. The mean is that
 * of the draws behind it, never the sum or the mean of medians.
 */
public final class Distribution {

    /** How many quantiles are kept. */
    public static final int SIZE = NormalTable.QUANTILES;

    /** Width of the central 80 % of a normal distribution in sds: 2 x 1.281552. */
    private static final double CENTRAL_80_SDS = 2.563103;

    private final double[] quantiles;
    private final double mean;

    private Distribution(double[] quantiles, double mean) {
        this.quantiles = quantiles;
        this.mean = mean;
    }

    /** From 200 ascending quantiles, for instance stored ones. */
    public static Distribution ofQuantiles(double[] ascending) {
        if (ascending.length != SIZE) {
            throw new IllegalArgumentException("200 quantiles are kept, not " + ascending.length);
        }
        double sum = 0;
        for (double q : ascending) {
            sum += q;
        }
        return new Distribution(ascending.clone(), sum / SIZE);
    }

    /** From draws in any order, their number a multiple of 200: each quantile is the mean of its slice of sorted draws. */
    public static Distribution ofDraws(double[] draws) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        int slice = sorted.length / SIZE;
        double[] quantiles = new double[SIZE];
        double total = 0;
        for (int m = 0; m < SIZE; m++) {
            double sum = 0;
            for (int k = m * slice; k < (m + 1) * slice; k++) {
                sum += sorted[k];
            }
            quantiles[m] = sum / slice;
            total += sum;
        }
        return new Distribution(quantiles, total / sorted.length);
    }

    /** Certainty. */
    public static Distribution exactly(double value) {
        double[] quantiles = new double[SIZE];
        Arrays.fill(quantiles, value);
        return new Distribution(quantiles, value);
    }

    static Distribution ofLogRatios(double[] logRatios, double scale) {
        double[] quantiles = new double[SIZE];
        for (int m = 0; m < SIZE; m++) {
            quantiles[m] = scale * Math.exp(Math.min(8, logRatios[m]));
        }
        return ofQuantiles(quantiles);
    }

    /** The value not exceeded with probability p, 0 to 1. */
    public double quantile(double p) {
        double at = p * SIZE - 0.5;
        if (at <= 0) {
            return quantiles[0];
        }
        if (at >= SIZE - 1) {
            return quantiles[SIZE - 1];
        }
        int below = (int) at;
        return quantiles[below] + (at - below) * (quantiles[below + 1] - quantiles[below]);
    }

    public double median() {
        return quantile(0.5);
    }

    public double p80() {
        return quantile(0.8);
    }

    public double p90() {
        return quantile(0.9);
    }

    /** Lower end of the central 80 % range. */
    public double low80() {
        return quantile(0.1);
    }

    /** Upper end of the central 80 % range, the same number as the one-sided P90. */
    public double high80() {
        return quantile(0.9);
    }

    public double mean() {
        return mean;
    }

    /** A copy of the 200 quantiles, to store. */
    public double[] quantiles() {
        return quantiles.clone();
    }

    double at(int m) {
        return quantiles[m];
    }

    /** Probability of a value below x, half of that of x itself; 0 to 1. */
    public double probabilityBelow(double x) {
        int below = 0;
        int same = 0;
        for (double q : quantiles) {
            if (q < x) {
                below++;
            } else if (q == x) {
                same++;
            }
        }
        return (below + same / 2.0) / SIZE;
    }

    /** Everything moved by a constant. */
    public Distribution plus(double constant) {
        double[] moved = new double[SIZE];
        for (int m = 0; m < SIZE; m++) {
            moved[m] = quantiles[m] + constant;
        }
        return new Distribution(moved, mean + constant);
    }

    /** Everything multiplied by a factor of 0 or more. */
    public Distribution times(double factor) {
        double[] scaled = new double[SIZE];
        for (int m = 0; m < SIZE; m++) {
            scaled[m] = quantiles[m] * factor;
        }
        return new Distribution(scaled, mean * factor);
    }

    /** Moved by a number of its own sds on the log scale, from its 10 % and 90 % quantiles; zero hours do not move. */
    public Distribution moved(double sds) {
        if (sds == 0 || low80() <= 0) {
            return this;
        }
        return times(Math.exp(sds * Math.log(high80() / low80()) / CENTRAL_80_SDS));
    }

    /** Widened about its median on the log scale: q becomes median x (q/median)^factor. */
    public Distribution widened(double factor) {
        double median = median();
        if (factor == 1 || median <= 0) {
            return this;
        }
        double[] wide = new double[SIZE];
        for (int m = 0; m < SIZE; m++) {
            wide[m] = median * Math.pow(quantiles[m] / median, factor);
        }
        return ofQuantiles(wide);
    }

    /** The draws that this was made from, widened in the same way. */
    double[] widened(double[] draws, double factor) {
        double median = median();
        double[] wide = draws.clone();
        for (int d = 0; d < wide.length && factor != 1 && median > 0; d++) {
            wide[d] = median * Math.pow(wide[d] / median, factor);
        }
        return wide;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Distribution that && Arrays.equals(quantiles, that.quantiles) && mean == that.mean;
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(quantiles);
    }

    @Override
    public String toString() {
        return "median %.3f, 80 %% range %.3f to %.3f, mean %.3f".formatted(median(), low80(), high80(), mean);
    }
}
