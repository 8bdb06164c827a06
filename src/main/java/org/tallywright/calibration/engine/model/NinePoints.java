package org.tallywright.calibration.engine.model;

import java.util.ArrayList;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;

/**
 * Integration over the standard deviations by the mode and two points along each axis of the curvature there: nine points
 * for the four standard deviations of a shop.
 *
 * <pre>
 *   H = Hessian of -lp at the mode (central differences of the gradient, step 0.05), eigenpairs (l_k, v_k), l_k &gt;= 1
 *   points: mode (weight 1 - 2d/12) and mode +- sqrt(6) v_k / sqrt(l_k), each (1/12) exp(clip(lp - lp_mode + 3, -3, 3))
 * </pre>
 *
 * <p>Source: the symmetric degree-five rule for a normal density (weights 1/3 and 1/12, radius sqrt 6 in four dimensions),
 * each point corrected by the true density: a normal at radius sqrt 6 has lp - lp_mode = -3. With few or no observations
 * the axes are those of the prior; with several hundred the mode alone says the same and the caller uses it.
 */
public final class NinePoints {

    private static final double STEP = 0.05;
    private static final double RADIUS = Math.sqrt(6);

    private NinePoints() {}

    /** The points around a mode, kept within the bounds of ln sd. */
    public static List<WeightedPoint> around(MixedModel model, ModelPoint mode, SdBounds bounds) {
        int size = mode.theta().length;
        var eigen = DecompositionFactory_DDRM.eig(size, true, true);
        if (!eigen.decompose(hessian(model, mode))) {
            return List.of(new WeightedPoint(1, mode));
        }
        List<ModelPoint> points = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        points.add(mode);
        weights.add(1 - size / 6.0);
        for (int k = 0; k < size; k++) {
            double reach = RADIUS / Math.sqrt(Math.max(1, eigen.getEigenvalue(k).getReal()));
            DMatrixRMaj axis = eigen.getEigenVector(k);
            for (int side = -1; side <= 1; side += 2) {
                double[] theta = mode.theta().clone();
                for (int i = 0; i < size; i++) {
                    theta[i] = bounds.clamp(i, theta[i] + side * reach * axis.get(i, 0));
                }
                ModelPoint point = model.at(theta);
                double density = point.logPosterior() - mode.logPosterior() + 3;
                points.add(point);
                weights.add(Math.exp(Math.max(-3, Math.min(3, density))) / 12);
            }
        }
        double sum = weights.stream().mapToDouble(Double::doubleValue).sum();
        List<WeightedPoint> weighted = new ArrayList<>();
        for (int k = 0; k < points.size(); k++) {
            weighted.add(new WeightedPoint(weights.get(k) / sum, points.get(k)));
        }
        return List.copyOf(weighted);
    }

    /** Hessian of minus the log posterior by theta at a point. */
    public static DMatrixRMaj hessian(MixedModel model, ModelPoint at) {
        int size = at.theta().length;
        DMatrixRMaj hessian = new DMatrixRMaj(size, size);
        for (int k = 0; k < size; k++) {
            double[] up = at.theta().clone();
            double[] down = at.theta().clone();
            up[k] += STEP;
            down[k] -= STEP;
            double[] above = model.at(up).gradient();
            double[] below = model.at(down).gradient();
            for (int j = 0; j < size; j++) {
                double slope = (below[j] - above[j]) / (2 * STEP);
                hessian.add(k, j, slope / 2);
                hessian.add(j, k, slope / 2);
            }
        }
        return hessian;
    }
}
