package org.tallywright.measuring;

import java.util.function.ToDoubleFunction;

/**
 * Carries the uncertainty of readings to a figure. The readings are taken as independent of each other; a figure that uses
 * one reading twice uses it once here, so what it shares with itself is right.
 */
final class Propagation {
    private static final double STEP = 1e-4;

    private Propagation() {}

    /**
     * To first order: the variance is the sum over the readings of (slope x standard uncertainty) squared, slopes by central
     * differences. Only for figures without a bend: at a tie of a least, a widest or an absolute value the slope is none.
     *
     * @param standard the standard uncertainty of each reading, in its unit
     */
    static Reckoned through(ToDoubleFunction<double[]> figure, double[] readings, double[] standard) {
        double variance = 0;
        for (int n = 0; n < readings.length; n++) {
            double part = slope(figure, readings, n) * standard[n];
            variance += part * part;
        }
        return new Reckoned(figure.applyAsDouble(readings), Math.sqrt(variance));
    }

    /**
     * For figures with a bend: the readings are drawn again and again about what was read ({@link Draws}), and the standard
     * uncertainty is the root mean square of how far the figure then lies from the one shown, so that it holds the lean of a
     * least or a widest too. Without a bend it is that of {@link #through}.
     */
    static Reckoned drawn(ToDoubleFunction<double[]> figure, double[] readings, double[] standard) {
        double shown = figure.applyAsDouble(readings);
        double sum = 0;
        double[] moved = new double[readings.length];
        for (int draw = 0; draw < Draws.COUNT; draw++) {
            for (int side = -1; side <= 1; side += 2) {
                for (int n = 0; n < moved.length; n++) {
                    moved[n] = readings[n] + side * Draws.of(n, draw) * standard[n];
                }
                double off = figure.applyAsDouble(moved) - shown;
                sum += off * off;
            }
        }
        return new Reckoned(shown, Math.sqrt(sum / (2 * Draws.COUNT)));
    }

    private static double slope(ToDoubleFunction<double[]> figure, double[] readings, int at) {
        double[] moved = readings.clone();
        moved[at] = readings[at] + STEP;
        double above = figure.applyAsDouble(moved);
        moved[at] = readings[at] - STEP;
        return (above - figure.applyAsDouble(moved)) / (2 * STEP);
    }
}
