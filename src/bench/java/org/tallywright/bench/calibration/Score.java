package org.tallywright.bench.calibration;

import java.util.SplittableRandom;
import org.tallywright.calibration.engine.Distribution;

/** Averages of proper scores and of where actual values fell; NaN where nothing was scored. */
final class Score {

    private static final double TIE = 1e-9;

    private final SplittableRandom random;
    private int count;
    private double crpsLog;
    private double rawCrpsLog;
    private double crps;
    private double crpsRelative;
    private double pinball50;
    private double pinball80;
    private double pinball90;
    private int inside;
    private int insideOrTied;
    private int below80;
    private int below90;
    private double means;
    private double actuals;

    /** The seed decides where inside an atom an actual value falls. */
    Score(long seed) {
        this.random = new SplittableRandom(seed);
    }

    void add(Distribution forecast, double estimate, double actual) {
        double[] q = forecast.quantiles();
        double[] log = new double[q.length];
        for (int m = 0; m < q.length; m++) {
            log[m] = Math.log(q[m] / estimate);
        }
        double hours = crps(q, actual);
        count++;
        crps += hours;
        crpsRelative += hours / estimate;
        crpsLog += crps(log, Math.log(actual / estimate));
        rawCrpsLog += Math.abs(Math.log(actual / estimate));
        pinball50 += pinball(0.5, forecast.quantile(0.5), actual);
        pinball80 += pinball(0.8, forecast.quantile(0.8), actual);
        pinball90 += pinball(0.9, forecast.quantile(0.9), actual);
        double pit = pit(q, actual);
        inside += pit >= 0.1 && pit <= 0.9 ? 1 : 0;
        below80 += pit <= 0.8 ? 1 : 0;
        below90 += pit <= 0.9 ? 1 : 0;
        insideOrTied += actual >= forecast.low80() * (1 - TIE) && actual <= forecast.high80() * (1 + TIE) ? 1 : 0;
        means += forecast.mean();
        actuals += actual;
    }

    /** Continuous ranked probability score of 200 quantiles: twice the mean pinball loss over their levels. */
    static double crps(double[] q, double actual) {
        double sum = 0;
        for (int m = 0; m < q.length; m++) {
            sum += pinball((m + 0.5) / q.length, q[m], actual);
        }
        return 2 * sum / q.length;
    }

    private static double pinball(double level, double quantile, double actual) {
        double off = actual - quantile;
        return off >= 0 ? level * off : (level - 1) * off;
    }

    /** Randomised probability integral transform: uniform if the forecasts are right, atoms or not. */
    private double pit(double[] q, double actual) {
        int below = 0;
        int upTo = 0;
        for (double value : q) {
            below += value < actual * (1 - TIE) ? 1 : 0;
            upTo += value <= actual * (1 + TIE) ? 1 : 0;
        }
        return (below + random.nextDouble() * (upTo - below)) / q.length;
    }

    int count() {
        return count;
    }

    double crpsLog() {
        return crpsLog / count;
    }

    /** The same for the estimate as it stands, a point. */
    double rawCrpsLog() {
        return rawCrpsLog / count;
    }

    double crps() {
        return crps / count;
    }

    double crpsRelative() {
        return crpsRelative / count;
    }

    double pinball50() {
        return pinball50 / count;
    }

    double pinball80() {
        return pinball80 / count;
    }

    double pinball90() {
        return pinball90 / count;
    }

    double central80() {
        return inside / (double) count;
    }

    double central80WithTies() {
        return insideOrTied / (double) count;
    }

    double p80() {
        return below80 / (double) count;
    }

    double p90() {
        return below90 / (double) count;
    }

    double meanBias() {
        return means / actuals - 1;
    }
}
