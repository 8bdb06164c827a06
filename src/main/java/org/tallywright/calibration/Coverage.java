package org.tallywright.calibration;

import org.hipparchus.distribution.continuous.BetaDistribution;

/**
 * How often something came true, with the range of true rates that would look like it four times in five.
 *
 * <p>Jeffreys interval: the 10 % and 90 % quantiles of Beta(k + 1/2, n - k + 1/2). Source: Brown, Cai, DasGupta, Interval
 * estimation for a binomial proportion, Statistical Science 16 (2001).
 *
 * @param hits how often
 * @param of out of how many
 * @param low lower end, 0 to 1
 */
public record Coverage(int hits, int of, double low, double high) {
    public static Coverage of(int hits, int of) {
        if (of == 0) {
            return new Coverage(0, 0, 0, 1);
        }
        BetaDistribution beta = new BetaDistribution(hits + 0.5, of - hits + 0.5);
        return new Coverage(hits, of, beta.inverseCumulativeProbability(0.1), beta.inverseCumulativeProbability(0.9));
    }
}
