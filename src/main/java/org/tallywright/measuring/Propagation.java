package org.tallywright.measuring;

import java.util.function.ToDoubleFunction;

/**
 * First-order propagation of uncertainty: the variance of a figure is the sum over its readings of (slope x standard
 * uncertainty) squared. The readings are taken as independent of each other; a figure that uses one reading twice uses
 * it once here, so what it shares with itself is right. Slopes are central differences.
 */
final class Propagation {
    private static final double STEP = 1e-4;

    private Propagation() {}

    /** @param standard the standard uncertainty of each reading, in its unit */
    static Reckoned through(ToDoubleFunction<double[]> figure, double[] readings, double[] standard) {
        double variance = 0;
        for (int n = 0; n < readings.length; n++) {
            double part = slope(figure, readings, n) * standard[n];
            variance += part * part;
        }
        return new Reckoned(figure.applyAsDouble(readings), Math.sqrt(variance));
    }

    private static double slope(ToDoubleFunction<double[]> figure, double[] readings, int at) {
        double[] moved = readings.clone();
        moved[at] = readings[at] + STEP;
        double above = figure.applyAsDouble(moved);
        moved[at] = readings[at] - STEP;
        return (above - figure.applyAsDouble(moved)) / (2 * STEP);
    }
}
