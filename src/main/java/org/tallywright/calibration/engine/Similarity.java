package org.tallywright.calibration.engine;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.engine.model.NormalTable;

/**
 * The top layer: what similar tasks of the past really took, mixed with the base model's forecast.
 *
 * <pre>
 *   k_i  = 0.5^(age_i/half-life) exp(-1/2 ((ln est_i - ln est)/width)^2) (same kind ? 1 : otherKind) x worker
 *   worker = otherWorker + (1 - otherWorker) x overlap of the shares; 1 where nobody is named
 *   F(x) = ( sum k_i [y_i &lt;= x] + b F_base(x) ) / ( sum k_i + b ),   b = what the base model is worth in tasks
 * </pre>
 *
 * <p>y = ln(actual/estimate), estimates in person-hours above 0, ages in days. It reproduces what no lognormal can: the pile
 * at actual = estimate and the spread's dependence on size. Source: kernel estimate of a conditional distribution
 * (Nadaraya and Watson) with a prior; widths in src/docs/calibration.md. n = 0: the base model alone; n = 1 or few: the
 * data's share is at most n/(n + b).
 */
final class Similarity {

    private final SimilaritySettings settings;
    private final BaseModel base;
    private final double[] ratio;
    private final double[] logEstimate;
    private final double[] decay;
    private final int[] kind;
    private final List<List<WorkerShare>> workers;
    private final int[] onlyWorker;
    private final String[] jobs;

    Similarity(LearntTasks learnt, BaseModel base, LocalDate asOf) {
        this.settings = base.settings().similarity();
        this.base = base;
        int[] order = IntStream.range(0, learnt.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> learnt.logRatio()[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        int n = order.length;
        ratio = new double[n];
        logEstimate = new double[n];
        decay = new double[n];
        kind = new int[n];
        onlyWorker = new int[n];
        jobs = new String[n];
        for (int k = 0; k < n; k++) {
            Observation task = learnt.tasks().get(order[k]);
            ratio[k] = learnt.logRatio()[order[k]];
            logEstimate[k] = Math.log(task.estimateHours());
            decay[k] = Columns.decay(task.done(), asOf, settings.halfLifeDays());
            jobs[k] = task.job();
            kind[k] = base.kinds().find(task.kind());
            onlyWorker[k] = task.workers().size() == 1
                    ? base.workers().find(task.workers().get(0).worker())
                    : -1;
        }
        workers = IntStream.of(order)
                .mapToObj(i -> learnt.tasks().get(i).workers())
                .toList();
    }

    /** The past tasks' weights for one new task, in ascending order of their ratios. */
    record Weights(double[] each, double sum) {}

    Weights weights(PlannedTask task) {
        return weights(task, null);
    }

    /** @param not key of a job whose own tasks must not be heard: those of a running one are known already */
    Weights weights(PlannedTask task, @Nullable String not) {
        double[] weight = new double[settings.used() ? ratio.length : 0];
        double sum = 0;
        double size = Math.log(task.estimateHours());
        int sameKind = base.kinds().find(task.kind());
        int worker = task.workers().size() == 1
                ? base.workers().find(task.workers().get(0).worker())
                : -1;
        double perWidth = KernelTable.PER_WIDTH / settings.width();
        for (int k = 0; k < weight.length; k++) {
            double near = KernelTable.at(Math.abs(logEstimate[k] - size) * perWidth);
            if (near > 0 && !jobs[k].equals(not)) {
                double match = kind[k] == sameKind ? 1 : settings.otherKind();
                weight[k] = decay[k] * near * match * people(task, k, worker);
                sum += weight[k];
            }
        }
        double heard = sum > 0 ? sum / (sum + settings.caution()) : 0;
        for (int k = 0; k < weight.length; k++) {
            weight[k] *= heard;
        }
        return new Weights(weight, sum * heard);
    }

    private double people(PlannedTask task, int past, int worker) {
        if (task.workers().isEmpty()) {
            return 1;
        }
        double overlap = 0;
        if (worker >= 0 && onlyWorker[past] >= 0) {
            overlap = worker == onlyWorker[past] ? 1 : 0;
        } else {
            for (WorkerShare mine : task.workers()) {
                for (WorkerShare theirs : workers.get(past)) {
                    overlap += mine.worker().equals(theirs.worker()) ? Math.min(mine.share(), theirs.share()) : 0;
                }
            }
        }
        return settings.otherWorker() + (1 - settings.otherWorker()) * overlap;
    }

    /** The 200 kept quantiles of the mixture of past ratios and the base model's quantiles. */
    double[] mixedWith(double[] baseQuantiles, Weights weights) {
        if (!settings.used()) {
            return baseQuantiles;
        }
        double[] weight = weights.each();
        double total = settings.baseTasks() + weights.sum();
        int count = NormalTable.QUANTILES;
        double each = settings.baseTasks() / count;
        double[] quantiles = new double[count];
        int past = 0;
        int model = 0;
        double sum = 0;
        double last = baseQuantiles[0];
        for (int m = 0; m < count; m++) {
            double wanted = (m + 0.5) / count * total * (1 - 1e-12);
            while (sum < wanted && (past < ratio.length || model < count)) {
                boolean fromPast = past < ratio.length && (model == count || ratio[past] <= baseQuantiles[model]);
                if (!fromPast) {
                    last = baseQuantiles[model++];
                    sum += each;
                } else if (weight[past] > 0) {
                    last = ratio[past];
                    sum += weight[past++];
                } else {
                    past++;
                }
            }
            quantiles[m] = last;
        }
        return quantiles;
    }

    /** exp(-x^2/2) in a straight line between steps of 1/512, 0 beyond six widths; off by less than 1e-6. */
    private static final class KernelTable {

        static final int PER_WIDTH = 512;
        private static final int WIDTHS = 6;
        private static final double[] TABLE = new double[WIDTHS * PER_WIDTH + 2];

        static {
            for (int k = 0; k <= WIDTHS * PER_WIDTH; k++) {
                double x = k / (double) PER_WIDTH;
                TABLE[k] = Math.exp(-x * x / 2);
            }
        }

        static double at(double steps) {
            if (!(steps < WIDTHS * PER_WIDTH)) {
                return 0;
            }
            int k = (int) steps;
            return TABLE[k] + (steps - k) * (TABLE[k + 1] - TABLE[k]);
        }
    }
}
