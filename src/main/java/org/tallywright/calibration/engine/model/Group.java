package org.tallywright.calibration.engine.model;

/**
 * Sums of one level g of the absorbed factor; they do not depend on theta.
 *
 * @param column reduced columns met in this level
 * @param cross B_g, weighted sum of each of those columns over the level
 * @param weight d_g, sum of the weights
 * @param response b_g, weighted sum of the responses
 */
record Group(int[] column, double[] cross, double weight, double response) {

    static final Group EMPTY = new Group(new int[0], new double[0], 0, 0);

    /** B_g' x. */
    double dot(double[] x) {
        double sum = 0;
        for (int a = 0; a < column.length; a++) {
            sum += cross[a] * x[column[a]];
        }
        return sum;
    }
}
