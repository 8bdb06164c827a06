package org.tallywright.calibration.engine.model;

import org.ejml.data.DMatrixRMaj;

/**
 * The model at one value of its standard deviations.
 *
 * @param theta ln of the standard deviations: residual, each factor, absorbed factor
 * @param logPosterior log posterior density of theta up to a constant
 * @param gradient derivative of it by theta
 * @param coefficients posterior mean of the reduced coefficients: fixed columns, then the levels of each factor
 * @param covariance posterior covariance of the same, given theta
 * @param absorbed posterior mean of the absorbed factor's effects
 */
public record ModelPoint(
        double[] theta,
        double logPosterior,
        double[] gradient,
        double[] coefficients,
        DMatrixRMaj covariance,
        double[] absorbed) {

    /** Standard deviation k in the order of theta: 0 is the residual. */
    public double sd(int k) {
        return Math.exp(theta[k]);
    }

    public double variance(int k) {
        return Math.exp(2 * theta[k]);
    }

    /** Index of the absorbed factor's standard deviation. */
    public int absorbedSd() {
        return theta.length - 1;
    }
}
