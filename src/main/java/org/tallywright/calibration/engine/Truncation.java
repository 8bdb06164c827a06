package org.tallywright.calibration.engine;

/**
 * Truncates a distribution given by ascending quantiles from below at a floor and renormalises it.
 *
 * <p>With F the share of the quantiles below the floor, the new quantile at p is the old one at F + (1 - F)p: interpolated in a
 * straight line, and beyond the last kept quantile with an exponential tail that goes on at the pace of the last twentieth.
 * A floor below every quantile changes nothing; one above all of them leaves that tail from the floor on.
 */
final class Truncation {

    private Truncation() {}

    static double[] above(double[] quantiles, double floor) {
        int n = quantiles.length;
        double top = quantiles[n - 1];
        double pace = Math.max(1e-6, (top - quantiles[n - 1 - n / 20]) / Math.log(n / 10.0 + 1));
        double left = survival(quantiles, floor, pace);
        double[] result = new double[n];
        for (int m = 0; m < n; m++) {
            double tail = left * (1 - (m + 0.5) / n);
            double last = 0.5 / n;
            if (tail < last) {
                result[m] = Math.max(floor, top + pace * Math.log(last / tail));
            } else {
                result[m] = Math.max(floor, at(quantiles, 1 - tail));
            }
        }
        return result;
    }

    /** Share of the distribution above x. */
    private static double survival(double[] quantiles, double x, double pace) {
        int n = quantiles.length;
        if (x < quantiles[0]) {
            return 1;
        }
        if (x >= quantiles[n - 1]) {
            return 0.5 / n * Math.exp(-Math.min(600, (x - quantiles[n - 1]) / pace));
        }
        int k = 0;
        while (quantiles[k + 1] <= x) {
            k++;
        }
        double part = (x - quantiles[k]) / (quantiles[k + 1] - quantiles[k]);
        return 1 - (k + 0.5 + part) / n;
    }

    private static double at(double[] quantiles, double p) {
        double at = p * quantiles.length - 0.5;
        if (at <= 0) {
            return quantiles[0];
        }
        int k = Math.min(quantiles.length - 2, (int) at);
        return quantiles[k] + Math.min(1, at - k) * (quantiles[k + 1] - quantiles[k]);
    }
}
