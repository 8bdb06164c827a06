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
 * @param later tasks of the second group: the newer, or the smaller ones
 */
public record Trend(double ratio, double low, double high, int tasks, int later) {
    private static final int ENOUGH = 6;
    private static final int FEWEST = 3;

    static Optional<Trend> of(List<Observation> some) {
        List<Observation> sorted = usable(some, Comparator.comparing(Observation::done));
        return compared(sorted, sorted.size() / 2);
    }

    /** The smaller tasks against the larger ones, cut where the halves come closest; tasks of one size are on one side. */
    static Optional<Trend> bySize(List<Observation> some) {
        List<Observation> sorted =
                usable(some, Comparator.comparing(Observation::estimateHours).reversed());
        int n = sorted.size();
        int cut = 0;
        for (int k = FEWEST; k <= n - FEWEST; k++) {
            boolean between = sorted.get(k - 1).estimateHours() > sorted.get(k).estimateHours();
            if (between && (cut == 0 || Math.abs(2 * k - n) < Math.abs(2 * cut - n))) {
                cut = k;
            }
        }
        return cut == 0 ? Optional.empty() : compared(sorted, cut);
    }

    private static List<Observation> usable(List<Observation> some, Comparator<Observation> order) {
        return some.stream()
                .filter(task -> task.estimateHours() > 0 && task.actualHours() > 0)
                .sorted(order)
                .toList();
    }

    private static Optional<Trend> compared(List<Observation> sorted, int half) {
        double[] y = sorted.stream()
                .mapToDouble(task -> Math.log(task.actualHours() / task.estimateHours()))
                .toArray();
        if (y.length < ENOUGH) {
            return Optional.empty();
        }
        double older = mean(y, 0, half);
        double newer = mean(y, half, y.length);
        double squares = squares(y, 0, half, older) + squares(y, half, y.length, newer);
        double sd = Math.sqrt(squares / (y.length - 2) * (1.0 / half + 1.0 / (y.length - half)));
        double d = newer - older;
        double t = new TDistribution(y.length - 2).inverseCumulativeProbability(0.9);
        return Optional.of(
                new Trend(Math.exp(d), Math.exp(d - t * sd), Math.exp(d + t * sd), y.length, y.length - half));
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
