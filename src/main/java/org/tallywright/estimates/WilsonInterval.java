package org.tallywright.estimates;

/**
 * Between which shares the true one lies four times in five, when so many of so many were counted: the score interval of
 * E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of the American
 * Statistical Association 22 (1927), 209-212. Its ends are the shares p with (k/n - p)^2 = z^2 p (1 - p) / n.
 *
 * @param low from 0 to 1
 * @param high from 0 to 1
 */
public record WilsonInterval(double low, double high) {
    /** Normal quantile of 0.9: a tenth is left out at either end. */
    static final double Z = 1.2815515655446004;

    /**
     * @param hits from 0 to n
     * @param n at least 1; with none counted nothing is known
     */
    public static WilsonInterval of(int hits, int n) {
        if (n < 1 || hits < 0 || hits > n) {
            throw new IllegalArgumentException(hits + " of " + n);
        }
        double share = (double) hits / n;
        double square = Z * Z / n;
        double middle = (share + square / 2) / (1 + square);
        double half = Z / (1 + square) * Math.sqrt(share * (1 - share) / n + square / (4 * n));
        return new WilsonInterval(hits == 0 ? 0 : middle - half, hits == n ? 1 : middle + half);
    }
}
