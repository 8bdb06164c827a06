package org.tallywright.calibration.engine;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;
import org.tallywright.calibration.engine.model.CommonDraws;
import org.tallywright.calibration.engine.model.Covariances;
import org.tallywright.calibration.engine.model.ModelPoint;
import org.tallywright.calibration.engine.model.NormalMixture;
import org.tallywright.calibration.engine.model.NormalTable;
import org.tallywright.calibration.engine.model.WeightedPoint;

/**
 * The joint base forecast of the tasks of one job: every distinct effect they share, with its covariance, before or after
 * the job's finished tasks are known.
 *
 * <pre>
 *   y_i = prior level + h_i'phi + e_i,   phi = (level, slope, kinds, workers, job) ~ N(m, V),   e_i ~ N(0, sigma^2)
 *   given finished tasks O:  V' = (V^-1 + H_O'H_O/sigma^2)^-1,   m' = m + V' H_O' e_O / sigma^2
 * </pre>
 *
 * <p>e_O are the finished tasks' residuals, cut at a few of their own sds so that one wild task does not move the job. With
 * phi drawn once, every task costs O(1) a draw: the same distribution as drawing all tasks from their n x n covariance.
 * Where forecasts are averaged over several points of theta, the draws are dealt out in proportion to the points'
 * weights, which finished tasks sharpen by their likelihood. No finished tasks: the forecast before the start.
 */
final class JobEffects {

    private final double level;
    private final List<Effect> basis = new ArrayList<>();
    private final List<int[]> index = new ArrayList<>();
    private final List<double[]> value = new ArrayList<>();
    private final List<String> noise = new ArrayList<>();
    private final CommonDraws common;
    private final List<Part> parts;

    /** One integration point: its weight, effects' mean and covariance. */
    private record Part(double weight, ModelPoint point, double[] mean, DMatrixRMaj covariance) {}

    /**
     * @param base the model, fitted without this job
     * @param tasks open tasks
     * @param finished this job's finished tasks with y = ln(actual/estimate)
     */
    JobEffects(BaseModel base, List<PlannedTask> tasks, LearntTasks finished, CommonDraws common) {
        this.level = base.settings().priors().level();
        this.common = common;
        Map<String, Integer> known = new HashMap<>();
        Map<String, Integer> keys = new HashMap<>();
        int job = base.mode().absorbedSd();
        for (PlannedTask task : tasks) {
            int same = keys.merge(task.key(), 1, Integer::sum);
            noise.add(same == 1 ? task.key() : task.key() + " " + same);
            addRow(base, task, known, job);
        }
        for (Observation done : finished.tasks()) {
            addRow(base, asPlanned(done), known, job);
        }
        double[] y = finished.logRatio();
        double clip = base.settings().totals().residualClip();
        List<Part> found = new ArrayList<>();
        List<Double> evidence = new ArrayList<>();
        for (WeightedPoint weighted : base.points()) {
            found.add(part(weighted, tasks.size(), y, clip, evidence));
        }
        this.parts = reweighted(found, evidence);
    }

    static PlannedTask asPlanned(Observation done) {
        return new PlannedTask(done.task(), done.kind(), done.workers(), done.estimateHours(), done.conditions());
    }

    private void addRow(BaseModel base, PlannedTask task, Map<String, Integer> known, int job) {
        List<Effect> effects = base.effects(task);
        effects.add(Effect.unseen("job", job, 1));
        int[] at = new int[effects.size()];
        double[] coefficient = new double[effects.size()];
        for (int k = 0; k < at.length; k++) {
            Effect effect = effects.get(k);
            Integer number = known.putIfAbsent(effect.name(), basis.size());
            if (number == null) {
                number = basis.size();
                basis.add(effect);
            }
            at[k] = number;
            coefficient[k] = effect.value();
        }
        index.add(at);
        value.add(coefficient);
    }

    private Part part(WeightedPoint weighted, int open, double[] y, double clip, List<Double> evidence) {
        ModelPoint point = weighted.point();
        int size = basis.size();
        double[] mean = new double[size];
        DMatrixRMaj covariance = new DMatrixRMaj(size, size);
        for (int a = 0; a < size; a++) {
            mean[a] = basis.get(a).mean(point);
            for (int b = 0; b < size; b++) {
                covariance.set(a, b, basis.get(a).covariance(basis.get(b), point));
            }
        }
        if (y.length == 0 || size == 0) {
            evidence.add(0.0);
            return new Part(weighted.weight(), point, mean, covariance);
        }
        double precision = 1 / point.variance(0);
        DMatrixRMaj posterior = Covariances.inverse(covariance);
        double[] pull = new double[size];
        double square = 0;
        double logDet = Covariances.logDet(covariance);
        for (int o = 0; o < y.length; o++) {
            int row = open + o;
            double sd = Math.sqrt(spread(row, covariance) + point.variance(0));
            double residual = Math.max(-clip * sd, Math.min(clip * sd, y[o] - level - dot(row, mean)));
            square += residual * residual * precision;
            int[] at = index.get(row);
            double[] h = value.get(row);
            for (int a = 0; a < at.length; a++) {
                pull[at[a]] += h[a] * residual * precision;
                for (int b = 0; b < at.length; b++) {
                    posterior.add(at[a], at[b], h[a] * h[b] * precision);
                }
            }
        }
        logDet += Covariances.logDet(posterior) + 2 * y.length * point.theta()[0];
        DMatrixRMaj after = Covariances.inverse(posterior);
        for (int a = 0; a < size; a++) {
            double shift = 0;
            for (int b = 0; b < size; b++) {
                shift += after.get(a, b) * pull[b];
            }
            square -= shift * pull[a];
            mean[a] += shift;
        }
        evidence.add(-(logDet + square) / 2);
        return new Part(weighted.weight(), point, mean, after);
    }

    private static List<Part> reweighted(List<Part> parts, List<Double> evidence) {
        double best = evidence.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        double[] weight = new double[parts.size()];
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            weight[k] = parts.get(k).weight() * Math.exp(evidence.get(k) - best);
            sum += weight[k];
        }
        List<Part> result = new ArrayList<>();
        for (int k = 0; k < weight.length; k++) {
            Part part = parts.get(k);
            result.add(new Part(weight[k] / sum, part.point(), part.mean(), part.covariance()));
        }
        return result;
    }

    /** Base forecast of one open task's ln(actual/estimate). */
    NormalMixture marginal(int task) {
        int size = parts.size();
        double[] weight = new double[size];
        double[] mean = new double[size];
        double[] sd = new double[size];
        for (int k = 0; k < size; k++) {
            Part part = parts.get(k);
            weight[k] = part.weight();
            mean[k] = level + dot(task, part.mean());
            sd[k] = Math.sqrt(spread(task, part.covariance()) + part.point().variance(0));
        }
        return new NormalMixture(weight, mean, sd);
    }

    /** Mean of the job's own effect: 0.12 is a job running 12 % over what its tasks alone would say, on the log scale. */
    double jobEffect() {
        for (int a = 0; a < basis.size(); a++) {
            if (basis.get(a).name().equals("job")) {
                double mean = 0;
                for (Part part : parts) {
                    mean += part.weight() * part.mean()[a];
                }
                return mean;
            }
        }
        return 0;
    }

    /** Common draws of the effects, one row for each, to be used with {@link #draw}. */
    double[][] effectDraws() {
        int size = basis.size();
        double[][] normals = new double[size][];
        for (int a = 0; a < size; a++) {
            normals[a] = common.normals(basis.get(a).name());
        }
        double[][] draws = new double[size][common.count()];
        int[] end = ends();
        int from = 0;
        for (int k = 0; k < parts.size(); k++) {
            DMatrixRMaj root = Covariances.root(parts.get(k).covariance());
            for (int a = 0; a < size; a++) {
                java.util.Arrays.fill(draws[a], from, end[k], parts.get(k).mean()[a]);
                for (int b = 0; b <= a; b++) {
                    double factor = root.get(a, b);
                    double[] target = draws[a];
                    double[] source = normals[b];
                    for (int d = from; factor != 0 && d < end[k]; d++) {
                        target[d] += factor * source[d];
                    }
                }
            }
            from = end[k];
        }
        return draws;
    }

    /** Draws of one open task's ln(actual/estimate), its own noise included. */
    double[] draw(int task, double[][] effectDraws) {
        double[] y = common.normals("task " + noise.get(task));
        int[] end = ends();
        int from = 0;
        for (int k = 0; k < parts.size(); k++) {
            double sigma = parts.get(k).point().sd(0);
            for (int d = from; d < end[k]; d++) {
                y[d] = level + sigma * y[d];
            }
            from = end[k];
        }
        int[] at = index.get(task);
        double[] h = value.get(task);
        for (int a = 0; a < at.length; a++) {
            double[] source = effectDraws[at[a]];
            double factor = h[a];
            for (int d = 0; d < y.length; d++) {
                y[d] += factor * source[d];
            }
        }
        return y;
    }

    /** Where each part's run of draws ends. */
    private int[] ends() {
        int[] end = new int[parts.size()];
        double sum = 0;
        for (int k = 0; k < end.length; k++) {
            sum += parts.get(k).weight();
            end[k] = k == end.length - 1 ? common.count() : (int) Math.round(sum * common.count());
        }
        return end;
    }

    private double dot(int row, double[] vector) {
        double sum = 0;
        for (int a = 0; a < index.get(row).length; a++) {
            sum += value.get(row)[a] * vector[index.get(row)[a]];
        }
        return sum;
    }

    private double spread(int row, DMatrixRMaj covariance) {
        int[] at = index.get(row);
        double[] h = value.get(row);
        double sum = 0;
        for (int a = 0; a < at.length; a++) {
            for (int b = 0; b < at.length; b++) {
                sum += h[a] * h[b] * covariance.get(at[a], at[b]);
            }
        }
        return sum;
    }

    /** Which kept quantile (0 .. 199) each draw stands for, by its rank among the draws. */
    static int[] slots(double[] draws) {
        int[] slots = CommonDraws.ranks(draws);
        for (int d = 0; d < slots.length; d++) {
            slots[d] = slots[d] * NormalTable.QUANTILES / slots.length;
        }
        return slots;
    }
}
