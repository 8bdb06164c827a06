package org.tallywright.calibration;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * The mean of some ratios on the log scale with its 80 % range: exp(m -+ t(.9; n - 1) s / sqrt n). Nothing below three.
 *
 * @param ratio 1.10 is 10 % over
 */
public record MeanRatio(double ratio, double low, double high, int of) {
    private static final int ENOUGH = 3;

    static Optional<MeanRatio> of(double[] ratios) {
        double[] y = Arrays.stream(ratios).map(Math::log).toArray();
        if (y.length < ENOUGH) {
            return Optional.empty();
        }
        double mean = Arrays.stream(y).average().orElse(0);
        double variance = Arrays.stream(y).map(v -> (v - mean) * (v - mean)).sum() / (y.length - 1);
        double half =
                new TDistribution(y.length - 1).inverseCumulativeProbability(0.9) * Math.sqrt(variance / y.length);
        return Optional.of(new MeanRatio(Math.exp(mean), Math.exp(mean - half), Math.exp(mean + half), y.length));
    }
}
