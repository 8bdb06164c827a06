package org.tallywright.calibration.engine.model;

import java.util.List;

/**
 * What the mixed model is fitted to.
 *
 * @param response r_i, the response less its prior mean
 * @param weight w_i, likelihood weight of each observation (above 0; 1 = plain)
 * @param fixed columns with a coefficient of their own, {@code fixed[column][row]}; a column of ones first
 * @param fixedSd prior sd of each such coefficient, N(0, sd^2); very large = near-flat
 * @param factors groupings kept in the reduced system
 * @param absorbed the grouping with most levels, eliminated level by level; each row in exactly one level
 * @param residual prior of the residual sd
 */
public record ModelData(
        double[] response,
        double[] weight,
        double[][] fixed,
        double[] fixedSd,
        List<Factor> factors,
        Factor absorbed,
        LogSdPrior residual) {

    int rows() {
        return response.length;
    }

    /** Number of standard deviations: residual, each factor, absorbed factor. */
    int sds() {
        return factors.size() + 2;
    }

    /** Prior of the k-th standard deviation in the order of theta. */
    public LogSdPrior prior(int k) {
        if (k == 0) {
            return residual;
        }
        return k <= factors.size() ? factors.get(k - 1).prior() : absorbed.prior();
    }

    /** Levels behind the k-th standard deviation; the sum of weights for the residual. */
    double size(int k) {
        if (k == 0) {
            double sum = 0;
            for (double w : weight) {
                sum += w;
            }
            return sum;
        }
        return k <= factors.size() ? factors.get(k - 1).levels() : absorbed.levels();
    }
}
