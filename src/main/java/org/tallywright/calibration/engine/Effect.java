package org.tallywright.calibration.engine;

import org.tallywright.calibration.engine.model.ModelPoint;

/**
 * One term of a task's linear predictor.
 *
 * @param name names the uncertain quantity; equal names are the same quantity
 * @param column reduced column where the data know it, -1 for a level never met
 * @param sd index of its standard deviation where it was never met
 * @param value its coefficient in this task: 1, a share, or z
 */
record Effect(String name, int column, int sd, double value) {

    static Effect seen(String name, int column, double value) {
        return new Effect(name, column, 0, value);
    }

    static Effect unseen(String name, int sd, double value) {
        return new Effect(name, -1, sd, value);
    }

    double mean(ModelPoint point) {
        return column < 0 ? 0 : point.coefficients()[column];
    }

    /** Covariance of two different or equal effects given theta. */
    double covariance(Effect other, ModelPoint point) {
        if (column >= 0 && other.column >= 0) {
            return point.covariance().get(column, other.column);
        }
        return column < 0 && other.column < 0 && name.equals(other.name) ? point.variance(sd) : 0;
    }
}
