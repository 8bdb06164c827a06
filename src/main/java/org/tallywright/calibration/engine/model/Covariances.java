package org.tallywright.calibration.engine.model;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/** Small covariance matrices by Cholesky's decomposition; one that is not positive definite is a mistake of the caller. */
public final class Covariances {

    private static final String NOT_POSITIVE = "a covariance is not positive definite";

    private Covariances() {}

    public static DMatrixRMaj inverse(DMatrixRMaj matrix) {
        var solver = LinearSolverFactory_DDRM.chol(matrix.numRows);
        if (!solver.setA(matrix.copy())) {
            throw new ArithmeticException(NOT_POSITIVE);
        }
        DMatrixRMaj inverse = new DMatrixRMaj(matrix.numRows, matrix.numCols);
        solver.invert(inverse);
        return inverse;
    }

    /** The lower triangle L with L L' = matrix. */
    public static DMatrixRMaj root(DMatrixRMaj matrix) {
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(matrix.numRows, true);
        if (!cholesky.decompose(matrix.copy())) {
            throw new ArithmeticException(NOT_POSITIVE);
        }
        return cholesky.getT(null);
    }

    public static double logDet(DMatrixRMaj matrix) {
        DMatrixRMaj root = root(matrix);
        double sum = 0;
        for (int a = 0; a < root.numRows; a++) {
            sum += 2 * Math.log(root.get(a, a));
        }
        return sum;
    }
}
