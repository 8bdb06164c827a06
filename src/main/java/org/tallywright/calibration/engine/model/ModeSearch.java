package org.tallywright.calibration.engine.model;

import java.util.Arrays;

/**
 * Finds the theta of highest posterior density within bounds: BFGS on the analytic gradient, coordinates at a bound that
 * the gradient pushes outward held there, backtracking until the Armijo condition holds.
 *
 * <p>The libraries used here hold no bounded quasi-Newton method for a scalar function; a test compares the mode found
 * with the one of Hipparchus' BOBYQA. The first inverse Hessian is the diagonal of a guess, 2N for the residual and half
 * the levels for each factor, plus the prior's curvature; from a cold start 8 to 15 evaluations are usual. Source: Nocedal
 * and Wright, Numerical Optimization, ch. 6 (memory). n = 0: the start, the prior's mean, is the answer at once.
 */
public final class ModeSearch {

    private static final int MAX_STEPS = 200;
    private static final double LONGEST_STEP = 1.5;

    private final MixedModel model;
    private final SdBounds bounds;

    public ModeSearch(MixedModel model, SdBounds bounds) {
        this.model = model;
        this.bounds = bounds;
    }

    /** Starts at the prior means. */
    public ModelPoint fromPriors() {
        double[] start = new double[model.data().sds()];
        for (int k = 0; k < start.length; k++) {
            start[k] = model.data().prior(k).mean();
        }
        return from(start);
    }

    public ModelPoint from(double[] start) {
        int size = start.length;
        double[] theta = start.clone();
        for (int k = 0; k < size; k++) {
            theta[k] = bounds.clamp(k, theta[k]);
        }
        ModelPoint point = model.at(theta);
        double[][] inverse = firstInverse(size);
        for (int step = 0; step < MAX_STEPS; step++) {
            double[] move = direction(point, inverse);
            double longest = 0;
            double gain = 0;
            for (int k = 0; k < size; k++) {
                longest = Math.max(longest, Math.abs(move[k]));
                gain += move[k] * point.gradient()[k];
            }
            if (longest < 1e-7 || gain < 1e-11) {
                break;
            }
            ModelPoint next = backtrack(point, move, longest);
            if (next == point) {
                break;
            }
            update(inverse, point, next);
            point = next;
        }
        return point;
    }

    /** True where a standard deviation sits at its lower bound, to be reported as zero. */
    public boolean atLowerBound(ModelPoint point, int k) {
        return point.theta()[k] <= bounds.lowest(k) + 1e-9;
    }

    private double[][] firstInverse(int size) {
        double[][] inverse = new double[size][size];
        for (int k = 0; k < size; k++) {
            double guess = model.data().size(k) * (k == 0 ? 2 : 0.5);
            inverse[k][k] = 1 / (guess + model.data().prior(k).curvature() + 1e-3);
        }
        return inverse;
    }

    private double[] direction(ModelPoint point, double[][] inverse) {
        int size = inverse.length;
        boolean[] held = new boolean[size];
        for (int k = 0; k < size; k++) {
            double g = point.gradient()[k];
            held[k] =
                    (point.theta()[k] <= bounds.lowest(k) && g < 0) || (point.theta()[k] >= bounds.highest() && g > 0);
        }
        double[] move = new double[size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size && !held[i]; j++) {
                move[i] += held[j] ? 0 : inverse[i][j] * point.gradient()[j];
            }
        }
        return move;
    }

    private ModelPoint backtrack(ModelPoint point, double[] move, double longest) {
        double length = Math.min(1, LONGEST_STEP / longest);
        for (int halving = 0; halving < 40; halving++, length /= 2) {
            double[] theta = point.theta().clone();
            double promised = 0;
            for (int k = 0; k < theta.length; k++) {
                theta[k] = bounds.clamp(k, theta[k] + length * move[k]);
                promised += (theta[k] - point.theta()[k]) * point.gradient()[k];
            }
            if (Arrays.equals(theta, point.theta())) {
                return point;
            }
            ModelPoint next = model.at(theta);
            if (next.logPosterior() >= point.logPosterior() + 1e-4 * promised) {
                return next;
            }
        }
        return point;
    }

    /** BFGS update of the inverse of minus the Hessian; skipped where the curvature met is not positive. */
    private static void update(double[][] inverse, ModelPoint old, ModelPoint now) {
        int size = inverse.length;
        double[] s = new double[size];
        double[] y = new double[size];
        double sy = 0;
        for (int k = 0; k < size; k++) {
            s[k] = now.theta()[k] - old.theta()[k];
            y[k] = old.gradient()[k] - now.gradient()[k];
            sy += s[k] * y[k];
        }
        if (sy <= 1e-12) {
            return;
        }
        double[] hy = new double[size];
        double yhy = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                hy[i] += inverse[i][j] * y[j];
            }
            yhy += y[i] * hy[i];
        }
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                inverse[i][j] += (1 + yhy / sy) * s[i] * s[j] / sy - (hy[i] * s[j] + s[i] * hy[j]) / sy;
            }
        }
    }
}
