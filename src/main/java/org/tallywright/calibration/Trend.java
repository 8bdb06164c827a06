package org.tallywright.calibration;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.tallywright.calibration.engine.Observation;

/**
 * Whether the newer half of a kind's tasks took longer for its unit than the older half.
 *
 * <pre>
 *   d = mean ln(actual/estimate) of the newer half - that of the older;  s^2 pooled;  80 % range d -+ t(.9; n - 2) s sqrt(1/n1 + 1/n2)
 * </pre>
 *
 * <p>Two-sample t interval with equal variances, from any textbook. Nothing below six tasks.
 *
 * @param ratio newer over older: 1.10 is 10 % longer
 * @param low lower end of its 80 % range
 * @param tasks all tasks behind it
 */
public record Trend(double ratio, double low, double high, int tasks) {
    private static final int ENOUGH = 6;

    static Optional<Trend> of(List<Observation> some) {
        return split(some, Comparator.comparing(Observation::done));
    }

    /** The smaller half of the tasks against the larger half. */
    static Optional<Trend> bySize(List<Observation> some) {
        return split(some, Comparator.comparing(Observation::estimateHours).reversed());
    }

    private static Optional<Trend> split(List<Observation> some, Comparator<Observation> order) {
        double[] y = some.stream()
                .filter(task -> task.estimateHours() > 0 && task.actualHours() > 0)
                .sorted(order)
                .mapToDouble(task -> Math.log(task.actualHours() / task.estimateHours()))
                .toArray();
        if (y.length < ENOUGH) {
            return Optional.empty();
        }
        int half = y.length / 2;
        double older = mean(y, 0, half);
        double newer = mean(y, half, y.length);
        double squares = squares(y, 0, half, older) + squares(y, half, y.length, newer);
        double sd = Math.sqrt(squares / (y.length - 2) * (1.0 / half + 1.0 / (y.length - half)));
        double d = newer - older;
        double t = new TDistribution(y.length - 2).inverseCumulativeProbability(0.9);
        return Optional.of(new Trend(Math.exp(d), Math.exp(d - t * sd), Math.exp(d + t * sd), y.length));
    }

    private static double mean(double[] y, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += y[i];
        }
        return sum / (to - from);
    }

    private static double squares(double[] y, int from, int to, double mean) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += (y[i] - mean) * (y[i] - mean);
        }
        return sum;
    }

    /** Slower, faster, or no clear change. */
    public String word() {
        return low > 1 ? "slower" : high < 1 ? "faster" : "no clear change";
    }
}
