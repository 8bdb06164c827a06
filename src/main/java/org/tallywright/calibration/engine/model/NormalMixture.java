package org.tallywright.calibration.engine.model;

/**
 * A weighted mixture of normals: the base model's distribution of ln(actual/estimate), one part for each integration point.
 *
 * <pre>
 *   F(x) = sum_k w_k Phi((x - m_k)/s_k),   w_k &gt;= 0 adding up to 1, s_k &gt; 0
 * </pre>
 *
 * <p>Quantiles are found by Newton steps kept between the smallest and the largest quantile of the parts, where the
 * mixture's must lie. Truncation from below at t keeps P(X &gt; x)/P(X &gt; t), renormalised; it is used for running tasks, whose
 * hours cannot end below what is logged. One part: a plain normal.
 *
 * @param weight w_k
 * @param mean m_k
 * @param sd s_k
 */
public record NormalMixture(double[] weight, double[] mean, double[] sd) {

    private static final double ACCURACY = 1e-10;

    public static NormalMixture of(double mean, double sd) {
        return new NormalMixture(new double[] {1}, new double[] {mean}, new double[] {sd});
    }

    public double cdf(double x) {
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            sum += weight[k] * NormalTable.cdf((x - mean[k]) / sd[k]);
        }
        return sum;
    }

    public double average() {
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            sum += weight[k] * mean[k];
        }
        return sum;
    }

    public double standardDeviation() {
        double average = average();
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            double off = mean[k] - average;
            sum += weight[k] * (sd[k] * sd[k] + off * off);
        }
        return Math.sqrt(sum);
    }

    /** The 200 kept quantiles, ascending. */
    public double[] quantiles() {
        double[] quantiles = new double[NormalTable.QUANTILES];
        for (int m = 0; m < quantiles.length; m++) {
            double z = NormalTable.score(m);
            quantiles[m] = weight.length == 1 ? mean[0] + sd[0] * z : quantile((m + 0.5) / NormalTable.QUANTILES, z);
        }
        return quantiles;
    }

    private double quantile(double p, double z) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double x = 0;
        for (int k = 0; k < weight.length; k++) {
            double part = mean[k] + sd[k] * z;
            low = Math.min(low, part);
            high = Math.max(high, part);
            x += weight[k] * part;
        }
        for (int step = 0; step < 100 && high - low > ACCURACY; step++) {
            double miss = -p;
            double slope = 0;
            for (int k = 0; k < weight.length; k++) {
                double u = (x - mean[k]) / sd[k];
                miss += weight[k] * NormalTable.cdf(u);
                slope += weight[k] * NormalTable.density(u) / sd[k];
            }
            if (miss > 0) {
                high = x;
            } else {
                low = x;
            }
            double next = x - miss / slope;
            boolean inside = next > low && next < high;
            if (inside && Math.abs(next - x) < ACCURACY) {
                return next;
            }
            x = inside ? next : (low + high) / 2;
        }
        return x;
    }

    /** P(X &gt; x), exact far out. */
    public double upperTail(double x) {
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            sum += weight[k] * NormalTable.upperTail((x - mean[k]) / sd[k]);
        }
        return sum;
    }

    /** The 200 kept quantiles given that X is above the floor; all just at the floor where no part reaches it. */
    public double[] quantilesAbove(double floor) {
        double above = upperTail(floor);
        double[] quantiles = new double[NormalTable.QUANTILES];
        double widest = 0;
        for (double s : sd) {
            widest = Math.max(widest, s);
        }
        double low = floor;
        for (int m = 0; m < quantiles.length; m++) {
            double tail = above * (1 - (m + 0.5) / NormalTable.QUANTILES);
            quantiles[m] = above < 1e-280 ? floor : lastAbove(tail, low, low + 4 * widest);
            low = quantiles[m];
        }
        return quantiles;
    }

    /** Bisection for the x with P(X &gt; x) = tail. */
    private double lastAbove(double tail, double from, double firstGuess) {
        double low = from;
        double high = firstGuess;
        while (upperTail(high) > tail) {
            high += high - low;
        }
        while (high - low > 1e-9) {
            double middle = (low + high) / 2;
            if (upperTail(middle) > tail) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
