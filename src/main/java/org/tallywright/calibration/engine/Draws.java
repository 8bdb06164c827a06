package org.tallywright.calibration.engine;

import java.util.Arrays;

/**
 * Equally likely values of one uncertain amount, in the order of the common draws: the d-th of one amount belongs to the d-th
 * of every other, so amounts are added draw by draw. Immutable.
 */
public final class Draws {

    private final double[] values;

    private Draws(double[] values) {
        this.values = values;
    }

    public static Draws of(double[] values) {
        return new Draws(values.clone());
    }

    public int count() {
        return values.length;
    }

    public double at(int draw) {
        return values[draw];
    }

    public double mean() {
        return Arrays.stream(values).sum() / values.length;
    }

    /** A copy, in the order of the draws. */
    public double[] values() {
        return values.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Draws that && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return values.length + " draws, mean " + mean();
    }
}
