package org.tallywright.calibration.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.tallywright.calibration.engine.model.Factor;
import org.tallywright.calibration.engine.model.MixedModel;
import org.tallywright.calibration.engine.model.ModeSearch;
import org.tallywright.calibration.engine.model.ModelData;
import org.tallywright.calibration.engine.model.ModelPoint;
import org.tallywright.calibration.engine.model.NinePoints;
import org.tallywright.calibration.engine.model.NormalMixture;
import org.tallywright.calibration.engine.model.WeightedPoint;

/**
 * The base model: one lognormal model of a shop's hours with partial pooling.
 *
 * <pre>
 *   y = ln(actual/estimate),  z = ln(estimate hours) - 2
 *   y = mu + beta z + conditions + kind + sum share x worker + job + e,   e ~ N(0, sigma^2 / w)
 *   w = min(estimate^exponent, its 95th percentile) / mean of the same, times 0.5^(age/half-life) where one is set
 * </pre>
 *
 * <p>y and every effect are pure numbers on the log scale (0.1 is about 10 %); hours are person-hours above 0. z is centred on
 * a fixed 2, not on the data, so that old and new fits compare. Priors are those of {@link Priors}; the job is the
 * absorbed factor. Source: src/docs/calibration.md. n = 0: the prior; n below 300: averaged over nine points of the
 * standard deviations; from there on the mode alone.
 */
final class BaseModel {

    static final int KIND = 0;
    static final int WORKER = 1;

    private final CalibrationSettings settings;
    private final MixedModel model;
    private final List<WeightedPoint> points;
    private final Levels kinds;
    private final Levels workers;
    private final Levels jobs;
    private final List<String> conditions;
    private final int tasks;

    private BaseModel(
            CalibrationSettings settings,
            MixedModel model,
            List<WeightedPoint> points,
            Levels kinds,
            Levels workers,
            Levels jobs,
            List<String> conditions,
            int tasks) {
        this.settings = settings;
        this.model = model;
        this.points = points;
        this.kinds = kinds;
        this.workers = workers;
        this.jobs = jobs;
        this.conditions = conditions;
        this.tasks = tasks;
    }

    static BaseModel fit(LearntTasks learnt, CalibrationSettings settings, LocalDate asOf) {
        List<Observation> tasks = learnt.tasks();
        int n = tasks.size();
        Levels kinds = new Levels();
        Levels workers = new Levels();
        Levels jobs = new Levels();
        int[] kind = new int[n];
        int[] job = new int[n];
        int[] from = new int[n + 1];
        List<Integer> worker = new ArrayList<>();
        List<Double> share = new ArrayList<>();
        double[] response = new double[n];
        for (int i = 0; i < n; i++) {
            Observation task = tasks.get(i);
            kind[i] = kinds.add(task.kind());
            job[i] = jobs.add(task.job());
            for (WorkerShare part : task.workers()) {
                worker.add(workers.add(part.worker()));
                share.add(part.share());
            }
            from[i + 1] = worker.size();
            response[i] = learnt.logRatio()[i] - settings.priors().level();
        }
        Priors priors = settings.priors();
        Factor people = new Factor(
                workers.size(),
                from,
                worker.stream().mapToInt(Integer::intValue).toArray(),
                share.stream().mapToDouble(Double::doubleValue).toArray(),
                priors.worker());
        List<String> conditions = Columns.conditions(tasks, settings.base().conditionTasks());
        ModelData data = new ModelData(
                response,
                Columns.weights(tasks, settings.base(), asOf),
                Columns.fixed(tasks, settings, conditions),
                Columns.fixedSd(settings, conditions),
                List.of(Factor.single(kinds.size(), kind, priors.kind()), people),
                Factor.single(jobs.size(), job, priors.job()),
                priors.residual());
        MixedModel model = new MixedModel(data);
        ModelPoint mode = search(model, settings).fromPriors();
        return new BaseModel(settings, model, points(model, mode, n, settings), kinds, workers, jobs, conditions, n);
    }

    /**
     * The same model as if a job had not been met: a running job's finished tasks must not count twice. The standard
     * deviations are searched again in a small shop; in a large one a single job does not move them.
     */
    BaseModel without(String job) {
        int group = jobs.find(job);
        if (group < 0) {
            return this;
        }
        MixedModel rest = model.without(group);
        double[] theta = mode().theta();
        ModelPoint mode = tasks < settings.base().integrateBelow()
                ? search(rest, settings).from(theta)
                : rest.at(theta);
        return new BaseModel(
                settings, rest, points(rest, mode, tasks, settings), kinds, workers, jobs, conditions, tasks);
    }

    private static ModeSearch search(MixedModel model, CalibrationSettings settings) {
        return new ModeSearch(model, settings.base().bounds());
    }

    private static List<WeightedPoint> points(MixedModel model, ModelPoint mode, int n, CalibrationSettings settings) {
        return n < settings.base().integrateBelow()
                ? NinePoints.around(model, mode, settings.base().bounds())
                : List.of(new WeightedPoint(1, mode));
    }

    List<WeightedPoint> points() {
        return points;
    }

    ModelPoint mode() {
        return points.get(0).point();
    }

    CalibrationSettings settings() {
        return settings;
    }

    /** Sd of the k-th grouping in the order residual, kind, worker, job; 0 where an effect's sd sits at its lower bound. */
    double sd(int k) {
        return k > 0 && search(model, settings).atLowerBound(mode(), k) ? 0 : mode().sd(k);
    }

    /** Effects of a task without job and residual, as columns of the reduced system or as new levels. */
    List<Effect> effects(PlannedTask task) {
        List<Effect> effects = new ArrayList<>();
        effects.add(Effect.seen("level", 0, 1));
        int column = 1;
        if (settings.base().slope()) {
            effects.add(Effect.seen("slope", column++, Columns.centred(task.estimateHours())));
        }
        for (String condition : conditions) {
            if (task.conditions().contains(condition)) {
                effects.add(Effect.seen("condition " + condition, column, 1));
            }
            column++;
        }
        effects.add(effect("kind " + task.kind(), KIND, kinds.find(task.kind()), 1));
        if (task.workers().isEmpty()) {
            effects.add(effect("worker", WORKER, -1, 1));
        }
        for (WorkerShare part : task.workers()) {
            effects.add(effect("worker " + part.worker(), WORKER, workers.find(part.worker()), part.share()));
        }
        return effects;
    }

    private Effect effect(String name, int factor, int level, double value) {
        return level < 0
                ? Effect.unseen(name, factor + 1, value)
                : Effect.seen(name, model.offset(factor) + level, value);
    }

    /** Variance of the task's expected log ratio now, over the same before any data: 1 with no history. */
    double priorShare(PlannedTask task) {
        ModelPoint point = mode();
        List<Effect> effects = effects(task);
        double now = 0;
        double before = 0;
        for (Effect one : effects) {
            for (Effect other : effects) {
                now += one.value() * other.value() * one.covariance(other, point);
            }
            before += one.value() * one.value() * priorVariance(one, point);
        }
        return Math.min(1, now / before);
    }

    private double priorVariance(Effect effect, ModelPoint point) {
        if (effect.column() < 0) {
            return point.variance(effect.sd());
        }
        double[] fixedSd = model.data().fixedSd();
        if (effect.column() < fixedSd.length) {
            return fixedSd[effect.column()] * fixedSd[effect.column()];
        }
        return point.variance(effect.column() < model.offset(WORKER) ? 1 + KIND : 1 + WORKER);
    }

    /** Effect of a kind on the log scale, 0 for one never met. */
    double kindEffect(String kind) {
        int level = kinds.find(kind);
        return level < 0 ? 0 : mode().coefficients()[model.offset(KIND) + level];
    }

    int observationsOf(String kind) {
        return kinds.count(kind);
    }

    Levels kinds() {
        return kinds;
    }

    Levels workers() {
        return workers;
    }

    List<String> conditions() {
        return conditions;
    }

    /** A condition's effect on ln(actual/estimate): what is believed before any data where it does not count. */
    NormalMixture conditionEffect(String condition) {
        int at = conditions.indexOf(condition);
        if (at < 0) {
            return NormalMixture.of(0, settings.priors().conditionSd());
        }
        Effect effect =
                Effect.seen("condition " + condition, 1 + (settings.base().slope() ? 1 : 0) + at, 1);
        return new NormalMixture(
                points.stream().mapToDouble(WeightedPoint::weight).toArray(),
                points.stream().mapToDouble(p -> effect.mean(p.point())).toArray(),
                points.stream()
                        .mapToDouble(p -> Math.sqrt(effect.covariance(effect, p.point())))
                        .toArray());
    }
}
