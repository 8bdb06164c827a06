package org.tallywright.calibration.engine.model;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;

/**
 * Weighted linear mixed model with normal priors, one factor absorbed.
 *
 * <pre>
 *   r_i = a_i'c + u_g(i) + e_i,   e_i ~ N(0, sigma^2 / w_i),   u_g ~ N(0, tau_abs^2)
 *   c = (fixed coefficients ~ N(0, fixedSd^2), levels of each factor ~ N(0, tau_f^2))
 *
 *   D_g = d_g/sigma^2 + 1/tau_abs^2
 *   S   = A'WA/sigma^2 + P - sum_g B_g B_g' / (sigma^4 D_g)     P = diag of the prior precisions
 *   h   = A'Wr/sigma^2 - sum_g B_g b_g / (sigma^4 D_g)
 *   c   = S^-1 h,   u_g = (b_g - B_g'c) / (sigma^2 D_g),   cov(c) = S^-1
 *   Q   = r'Wr/sigma^2 - sum_g b_g^2 / (sigma^4 D_g) - h'c
 *   lp  = -1/2 [ 2N ln sigma + sum_f 2 L_f ln tau_f + 2G ln tau_abs + sum ln fixedSd^2
 *                + ln det S + sum_g ln D_g + Q ] + log priors of theta,   N = sum of weights
 * </pre>
 *
 * <p>theta = ln(sigma, tau_1 .., tau_abs), any real. Units are those of the response. Source: Gaussian elimination of one
 * block of Henderson's mixed model equations; with near-flat priors lp is the restricted likelihood, which the tests
 * compare with published fits. The gradient uses Fisher's identity: the derivative of the log posterior is the
 * expectation of the complete-data derivative, so only traces of S^-1 are needed.
 *
 * <p>n = 0: S = P, every coefficient 0, lp is the prior. n = 1 or few: proper through the priors. Cost of building O(n), of
 * one evaluation O(groups x columns met^2 + columns^3).
 */
public final class MixedModel {

    private final ModelData data;
    private final int[] offset;
    private final int columns;
    private final double weightSum;
    private final double square;
    private final DMatrixRMaj cross;
    private final double[] response;
    private final Group[] groups;

    public MixedModel(ModelData data) {
        this.data = data;
        this.offset = offsets(data);
        this.columns = offset[offset.length - 1];
        CrossProducts sums = new CrossProducts(data, offset);
        this.weightSum = sums.weight();
        this.square = sums.square();
        this.cross = sums.cross();
        this.response = sums.response();
        this.groups = sums.groups();
    }

    private MixedModel(MixedModel whole, int group, CrossProducts left) {
        this.data = whole.data;
        this.offset = whole.offset;
        this.columns = whole.columns;
        this.weightSum = whole.weightSum - left.weight();
        this.square = whole.square - left.square();
        this.cross = whole.cross.copy();
        for (int k = 0; k < cross.data.length; k++) {
            cross.data[k] -= left.cross().data[k];
        }
        this.response = whole.response.clone();
        for (int j = 0; j < columns; j++) {
            response[j] -= left.response()[j];
        }
        this.groups = whole.groups.clone();
        this.groups[group] = Group.EMPTY;
    }

    public ModelData data() {
        return data;
    }

    /** First reduced column of factor f. */
    public int offset(int f) {
        return offset[f];
    }

    public int columns() {
        return columns;
    }

    /** The same model with one level of the absorbed factor not yet observed, at the cost of that level's rows. */
    public MixedModel without(int group) {
        return new MixedModel(this, group, new CrossProducts(data, offset, group));
    }

    /** Evaluates the model at theta; lp is minus infinity where the arithmetic fails. */
    public ModelPoint at(double[] theta) {
        double precision = Math.exp(-2 * theta[0]);
        double absorbedPrecision = Math.exp(-2 * theta[theta.length - 1]);
        double[] prior = priorPrecision(theta);
        DMatrixRMaj s = cross.copy();
        double[] h = new double[columns];
        for (int k = 0; k < s.data.length; k++) {
            s.data[k] *= precision;
        }
        for (int j = 0; j < columns; j++) {
            s.data[j * columns + j] += prior[j];
            h[j] = response[j] * precision;
        }
        double q = square * precision;
        double logD = 0;
        double[] d = new double[groups.length];
        for (int g = 0; g < groups.length; g++) {
            Group group = groups[g];
            d[g] = group.weight() * precision + absorbedPrecision;
            double factor = precision * precision / d[g];
            subtractOuter(s, group, factor);
            for (int a = 0; a < group.column().length; a++) {
                h[group.column()[a]] -= group.cross()[a] * group.response() * factor;
            }
            q -= group.response() * group.response() * factor;
            logD += Math.log(d[g]);
        }
        return solve(theta, prior, s, h, q, logD, d);
    }

    private ModelPoint solve(
            double[] theta, double[] prior, DMatrixRMaj s, double[] h, double q, double logD, double[] d) {
        var solver = LinearSolverFactory_DDRM.chol(columns);
        DMatrixRMaj c = new DMatrixRMaj(columns, 1);
        DMatrixRMaj inverse = new DMatrixRMaj(columns, columns);
        if (!solver.setA(s)) {
            return new ModelPoint(theta, Double.NEGATIVE_INFINITY, new double[theta.length], c.data, inverse, d);
        }
        DMatrixRMaj lower = solver.<org.ejml.interfaces.decomposition.CholeskyDecomposition_F64<DMatrixRMaj>>
                        getDecomposition()
                .getT(null);
        double logDet = 0;
        for (int j = 0; j < columns; j++) {
            logDet += 2 * Math.log(lower.data[j * columns + j]);
        }
        solver.solve(DMatrixRMaj.wrap(columns, 1, h), c);
        solver.invert(inverse);
        double[] u = new double[groups.length];
        double precision = Math.exp(-2 * theta[0]);
        double explained = 0;
        for (int j = 0; j < columns; j++) {
            explained += h[j] * c.data[j];
        }
        for (int g = 0; g < groups.length; g++) {
            u[g] = (groups[g].response() - groups[g].dot(c.data)) * precision / d[g];
        }
        double lp = 2 * weightSum * theta[0] + logDet + logD + q - explained;
        for (int j = 0; j < data.fixedSd().length; j++) {
            lp += 2 * Math.log(data.fixedSd()[j]);
        }
        for (int k = 1; k < theta.length; k++) {
            lp += 2 * data.size(k) * theta[k];
        }
        lp *= -0.5;
        for (int k = 0; k < theta.length; k++) {
            lp += data.prior(k).logDensity(theta[k]);
        }
        return new ModelPoint(theta, lp, gradient(theta, prior, c.data, inverse, u, d), c.data, inverse, u);
    }

    /** Fisher's identity: -L + (sum of squared effects + trace of their covariance) / sd^2 for each factor. */
    private double[] gradient(double[] theta, double[] prior, double[] c, DMatrixRMaj inverse, double[] u, double[] d) {
        double precision = Math.exp(-2 * theta[0]);
        double[] gradient = new double[theta.length];
        double freedom = columns + groups.length;
        for (int j = 0; j < data.fixedSd().length; j++) {
            freedom -= inverse.data[j * columns + j] * prior[j];
        }
        for (int f = 0; f < data.factors().size(); f++) {
            double sum = 0;
            double trace = 0;
            for (int j = offset[f]; j < offset[f + 1]; j++) {
                sum += c[j] * c[j];
                trace += inverse.data[j * columns + j];
            }
            double tau = Math.exp(-2 * theta[f + 1]);
            freedom -= trace * tau;
            gradient[f + 1] = -data.factors().get(f).levels() + (sum + trace) * tau;
        }
        double sum = 0;
        double trace = 0;
        double residual = square;
        for (int g = 0; g < groups.length; g++) {
            Group group = groups[g];
            sum += u[g] * u[g];
            trace += 1 / d[g] + quadratic(inverse, group) * precision * precision / (d[g] * d[g]);
            residual += u[g] * (group.weight() * u[g] - 2 * group.response() + 2 * group.dot(c));
        }
        int last = theta.length - 1;
        double tau = Math.exp(-2 * theta[last]);
        freedom -= trace * tau;
        gradient[last] = -groups.length + (sum + trace) * tau;
        for (int i = 0; i < columns; i++) {
            double row = 0;
            for (int j = 0; j < columns; j++) {
                row += cross.data[i * columns + j] * c[j];
            }
            residual += c[i] * (row - 2 * response[i]);
        }
        gradient[0] = -weightSum + residual * precision + freedom;
        for (int k = 0; k < theta.length; k++) {
            gradient[k] += data.prior(k).slope(theta[k]);
        }
        return gradient;
    }

    private double[] priorPrecision(double[] theta) {
        double[] prior = new double[columns];
        for (int j = 0; j < data.fixedSd().length; j++) {
            prior[j] = 1 / (data.fixedSd()[j] * data.fixedSd()[j]);
        }
        for (int f = 0; f < data.factors().size(); f++) {
            Arrays.fill(prior, offset[f], offset[f + 1], Math.exp(-2 * theta[f + 1]));
        }
        return prior;
    }

    private void subtractOuter(DMatrixRMaj s, Group group, double factor) {
        int[] column = group.column();
        double[] cross = group.cross();
        for (int a = 0; a < column.length; a++) {
            int row = column[a] * columns;
            double scaled = cross[a] * factor;
            for (int b = 0; b < column.length; b++) {
                s.data[row + column[b]] -= scaled * cross[b];
            }
        }
    }

    private double quadratic(DMatrixRMaj inverse, Group group) {
        int[] column = group.column();
        double[] cross = group.cross();
        double sum = 0;
        for (int a = 0; a < column.length; a++) {
            int row = column[a] * columns;
            double inner = 0;
            for (int b = 0; b < column.length; b++) {
                inner += inverse.data[row + column[b]] * cross[b];
            }
            sum += cross[a] * inner;
        }
        return sum;
    }

    private static int[] offsets(ModelData data) {
        int[] offset = new int[data.factors().size() + 1];
        offset[0] = data.fixed().length;
        for (int f = 0; f < data.factors().size(); f++) {
            offset[f + 1] = offset[f] + data.factors().get(f).levels();
        }
        return offset;
    }
}
