package org.tallywright.calibration.engine;

/**
 * What is still believed of a single finished task.
 *
 * @param largestLogRatio |ln(actual/estimate)| is cut here, so that a typing error cannot move the shop
 * @param smallestActual fewer hours than this on a finished task count as this
 */
public record Limits(double largestLogRatio, double smallestActual) {

    /** Ratios from about 1/20 to 20, at least 3 minutes. */
    public static Limits standard() {
        return new Limits(3, 0.05);
    }

    public static Limits none() {
        return new Limits(Double.POSITIVE_INFINITY, 0);
    }
}
