package org.tallywright.calibration.engine;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.tallywright.calibration.engine.model.CommonDraws;

/**
 * Hours that no line of the estimate names, as a shrunk share of the hours that lines do name: without them every total is
 * low and still looks calibrated.
 *
 * <pre>
 *   s = hours on no line / hours on lines of a finished job
 *   F(x) = ( sum_j [s_j &lt;= x] + k F_start(x) ) / ( m + k ),   F_start gamma with mean 0.08 and sd 0.06, k = 4 jobs
 *   mean = ( sum_j s_j + k x 0.08 ) / ( m + k );   a total becomes lines x (1 + s), s drawn independently
 * </pre>
 *
 * <p>s is a pure number, 0 or more, cut at 2. The starting mean of 8 % is a guess below common practice (10 to 20 %).
 * m = 0: the starting value; m = 1 or few: at most m/(m + 4) of it is the shop's own. A job without line hours is left out.
 * Each hour class keeps its own shrunk mean, so rework and travel are seen and do not hide in the rates.
 */
public final class HoursOnNoLine {

    private static final double STARTING_SHARE = 0.08;
    private static final double STARTING_SD = 0.06;
    private static final double PSEUDO_JOBS = 4;
    private static final double LARGEST = 2;

    private final Distribution share;
    private final Map<String, Double> byClass;
    private final int jobs;

    private HoursOnNoLine(Distribution share, Map<String, Double> byClass, int jobs) {
        this.share = share;
        this.byClass = byClass;
        this.jobs = jobs;
    }

    /** Nothing is added to totals; for data in which every hour is on a line. */
    public static HoursOnNoLine none() {
        return new HoursOnNoLine(Distribution.exactly(0), Map.of(), 0);
    }

    /** The starting share and what finished jobs say. */
    public static HoursOnNoLine learn(List<JobHours> finished) {
        List<JobHours> jobs = finished.stream()
                .filter(job -> job.lineHours() > 0 && job.share() >= 0)
                .toList();
        int m = jobs.size();
        double[] values = new double[m + Distribution.SIZE];
        double[] weights = new double[values.length];
        double shape = STARTING_SHARE * STARTING_SHARE / (STARTING_SD * STARTING_SD);
        GammaDistribution start = new GammaDistribution(shape, STARTING_SHARE / shape);
        for (int k = 0; k < Distribution.SIZE; k++) {
            values[k] = start.inverseCumulativeProbability((k + 0.5) / Distribution.SIZE);
            weights[k] = PSEUDO_JOBS / Distribution.SIZE;
        }
        for (int j = 0; j < m; j++) {
            values[Distribution.SIZE + j] = Math.min(LARGEST, jobs.get(j).share());
            weights[Distribution.SIZE + j] = 1;
        }
        return new HoursOnNoLine(mixture(values, weights), means(jobs), m);
    }

    private static Map<String, Double> means(List<JobHours> jobs) {
        Map<String, Double> sums = new TreeMap<>();
        for (JobHours job : jobs) {
            double scale = job.share() > LARGEST ? LARGEST / job.share() : 1;
            job.otherHours().forEach((name, hours) -> sums.merge(name, scale * hours / job.lineHours(), Double::sum));
        }
        sums.replaceAll((name, sum) -> sum / (jobs.size() + PSEUDO_JOBS));
        return sums;
    }

    /** Weighted mixture as 200 slices of equal weight, each given by its mean, so that the mean is kept exactly. */
    private static Distribution mixture(double[] values, double[] weights) {
        Integer[] order = new Integer[values.length];
        Arrays.setAll(order, k -> k);
        Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
        double slice = Arrays.stream(weights).sum() / Distribution.SIZE;
        double[] quantiles = new double[Distribution.SIZE];
        int at = 0;
        double left = weights[order[0]];
        for (int m = 0; m < quantiles.length; m++) {
            double need = slice;
            double sum = 0;
            while (need > 0) {
                double taken = Math.min(need, left);
                sum += taken * values[order[at]];
                need -= taken;
                left -= taken;
                if (left <= 1e-12 && at < order.length - 1) {
                    left = weights[order[++at]];
                } else if (left <= 1e-12) {
                    sum += need * values[order[at]];
                    need = 0;
                }
            }
            quantiles[m] = sum / slice;
        }
        return Distribution.ofQuantiles(quantiles);
    }

    /** The share as a distribution. */
    public Distribution share() {
        return share;
    }

    /** Shrunk mean share of each hour class met so far; together with the starting part they make the mean share. */
    public Map<String, Double> shareByClass() {
        return Map.copyOf(byClass);
    }

    /** Finished jobs behind it. */
    public int jobs() {
        return jobs;
    }

    /** How much of it is still the starting share, 0 to 1. */
    public double startingShare() {
        return PSEUDO_JOBS / (jobs + PSEUDO_JOBS);
    }

    /** Draws of 1 + s, the same for every job. */
    double[] multipliers(CommonDraws common) {
        int[] slot = JobEffects.slots(common.normals("hours on no line"));
        double[] result = new double[slot.length];
        for (int d = 0; d < slot.length; d++) {
            result[d] = 1 + share.at(slot[d]);
        }
        return result;
    }
}
