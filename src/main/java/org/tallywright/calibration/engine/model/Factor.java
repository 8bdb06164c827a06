package org.tallywright.calibration.engine.model;

/**
 * One grouping of the observations, such as task kind or worker; each level has an effect ~ N(0, sd^2).
 *
 * <p>An observation may belong to several levels by shares (two people on one task), or to none. Stored row after row:
 * the entries of row i are {@code from[i] .. from[i + 1] - 1}.
 *
 * @param levels number of levels seen, 0 or more
 * @param from where each row's entries start; one longer than the number of rows
 * @param level level of each entry, 0-based
 * @param share share of each entry, 1 for a plain membership
 * @param prior prior of the effects' standard deviation
 */
public record Factor(int levels, int[] from, int[] level, double[] share, LogSdPrior prior) {

    /** Every observation in exactly one level. */
    public static Factor single(int levels, int[] levelOfRow, LogSdPrior prior) {
        int n = levelOfRow.length;
        int[] from = new int[n + 1];
        double[] share = new double[n];
        for (int i = 0; i < n; i++) {
            from[i + 1] = i + 1;
            share[i] = 1;
        }
        return new Factor(levels, from, levelOfRow, share, prior);
    }
}
