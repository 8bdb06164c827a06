package org.tallywright.calibration.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.tallywright.calibration.engine.model.CommonDraws;
import org.tallywright.calibration.engine.model.ModelPoint;
import org.tallywright.calibration.engine.model.NormalMixture;

/**
 * A fitted shop: asks for hours, answers with distributions.
 *
 * <p>A task's distribution is the base model's, mixed with what similar past tasks took ({@link Similarity}). A job's total adds
 * the tasks draw by draw under a Gaussian copula: the base model's joint draws give each task a rank, the rank picks a
 * quantile of the task's own distribution. So a job of one task has that task's distribution, and a total's mean is the
 * sum of the tasks' means; medians do not add. Hours are person-hours. No history: everything is the prior, the starting
 * rates with a pessimistic level. Immutable.
 */
public final class Calibration {

    private static final double HALF_A_MINUTE = 1 / 120.0;

    private final LearntTasks learnt;
    private final BaseModel base;
    private final Similarity similarity;
    private final CommonDraws common;
    private final HoursOnNoLine onNoLine;
    private final SelfCalibration record;

    Calibration(LearntTasks learnt, BaseModel base, LocalDate asOf) {
        this(
                learnt,
                base,
                new Similarity(learnt, base, asOf),
                new CommonDraws(
                        base.settings().totals().draws(),
                        base.settings().totals().seed()),
                HoursOnNoLine.none(),
                SelfCalibration.none());
    }

    private Calibration(
            LearntTasks learnt,
            BaseModel base,
            Similarity similarity,
            CommonDraws common,
            HoursOnNoLine onNoLine,
            SelfCalibration record) {
        this.learnt = learnt;
        this.base = base;
        this.similarity = similarity;
        this.common = common;
        this.onNoLine = onNoLine;
        this.record = record;
    }

    /** The same calibration with a share for hours on no line added to every total. */
    public Calibration with(HoursOnNoLine share) {
        return new Calibration(learnt, base, similarity, common, share, record);
    }

    /** The same calibration with totals widened as the shop's stored forecasts ask for. */
    public Calibration with(SelfCalibration past) {
        return new Calibration(learnt, base, similarity, common, onNoLine, past);
    }

    /** The hours of one task of a job not met before. */
    public TaskForecast taskForecast(PlannedTask task) {
        if (task.estimateHours() == 0) {
            return new TaskForecast(Distribution.exactly(0), observationsOf(task.kind()), 0, 1);
        }
        JobEffects effects = new JobEffects(base, List.of(task), nothing(), common);
        return taskForecast(task, effects.marginal(0));
    }

    private TaskForecast taskForecast(PlannedTask task, NormalMixture marginal) {
        Similarity.Weights weights = similarity.weights(task);
        double similar = weights.sum();
        double[] logRatios = similarity.mixedWith(marginal.quantiles(), weights);
        SimilaritySettings layered = base.settings().similarity();
        double layer = layered.used() ? layered.baseTasks() / (similar + layered.baseTasks()) : 1;
        return new TaskForecast(
                Distribution.ofLogRatios(logRatios, task.estimateHours()),
                observationsOf(task.kind()),
                similar,
                layer * base.priorShare(task));
    }

    /** The hours of a whole job not met before. */
    public JobForecast jobForecast(List<PlannedTask> tasks) {
        List<TaskForecast> forecasts = new ArrayList<>();
        double[] total = totals(tasks, ones(tasks.size()), forecasts);
        Distribution lines = Distribution.ofDraws(total);
        double[] multiplier = onNoLine.multipliers(common);
        for (int d = 0; d < total.length; d++) {
            total[d] *= multiplier[d];
        }
        double estimate = 0;
        double starting = 0;
        for (int i = 0; i < tasks.size(); i++) {
            estimate += tasks.get(i).estimateHours();
            starting += tasks.get(i).estimateHours() * forecasts.get(i).startingShare();
        }
        double widen = record.factor(PastForecast.Stage.AT_BID);
        Distribution unwidened = Distribution.ofDraws(total);
        return new JobForecast(
                unwidened.widened(widen),
                unwidened,
                Draws.of(unwidened.widened(total, widen)),
                lines,
                List.copyOf(forecasts),
                estimate > 0 ? starting / estimate : 1);
    }

    /** The draws of the tasks' hours added up, each multiplied by a factor of its own, in the same order for every call. */
    public Draws lineDraws(List<PlannedTask> tasks, double[] factor) {
        return Draws.of(totals(tasks, factor, new ArrayList<>()));
    }

    private double[] totals(List<PlannedTask> tasks, double[] factor, List<TaskForecast> forecasts) {
        List<PlannedTask> real =
                tasks.stream().filter(task -> task.estimateHours() > 0).toList();
        JobEffects effects = new JobEffects(base, real, nothing(), common);
        double[][] shared = effects.effectDraws();
        double[] total = new double[common.count()];
        int next = 0;
        for (int i = 0; i < tasks.size(); i++) {
            PlannedTask task = tasks.get(i);
            if (task.estimateHours() == 0) {
                forecasts.add(taskForecast(task));
                continue;
            }
            TaskForecast forecast = taskForecast(task, effects.marginal(next));
            add(total, JobEffects.slots(effects.draw(next, shared)), forecast.hours(), factor[i]);
            forecasts.add(forecast);
            next++;
        }
        return total;
    }

    private static void add(double[] total, int[] slot, Distribution hours, double factor) {
        for (int d = 0; d < total.length; d++) {
            total[d] += factor * hours.at(slot[d]);
        }
    }

    /**
     * Where a running job will end, given its finished tasks. Half of it is the base model's, fitted without this job, half what
     * similar tasks of other jobs took; from the start until a quarter is done the bid-time forecast, which is all of the
     * latter, fades out, so that the first finished task makes no jump. An open task's distribution is truncated at what is
     * logged on it.
     */
    public RunningForecast runningForecast(RunningJob job) {
        LearntTasks finished = LearntTasks.from(job.finished(), base.settings());
        List<RunningTask> open = job.open();
        List<PlannedTask> planned = open.stream()
                .map(RunningTask::task)
                .filter(task -> task.estimateHours() > 0)
                .toList();
        JobEffects effects = new JobEffects(base.without(job.job()), planned, finished, common);
        double[][] shared = effects.effectDraws();
        double share = job.shareDone();
        double until = base.settings().totals().blendUntil();
        double trust = base.settings().totals().baseShare() * (until > 0 ? Math.min(1, share / until) : 1);
        double[] remaining = new double[common.count()];
        List<Distribution> tasks = new ArrayList<>();
        int next = 0;
        for (RunningTask task : open) {
            if (task.task().estimateHours() == 0) {
                tasks.add(Distribution.exactly(task.loggedHours()));
                continue;
            }
            Distribution hours = atEnd(task, job.job(), effects.marginal(next), trust);
            add(remaining, JobEffects.slots(effects.draw(next, shared)), hours.plus(-task.loggedHours()), 1);
            tasks.add(hours);
            next++;
        }
        return running(job, remaining, effects, tasks);
    }

    private RunningForecast running(RunningJob job, double[] remaining, JobEffects effects, List<Distribution> tasks) {
        double[] multiplier = onNoLine.multipliers(common);
        for (int d = 0; d < remaining.length; d++) {
            remaining[d] *= multiplier[d];
        }
        double share = job.shareDone();
        Distribution unwidened = Distribution.ofDraws(remaining);
        Distribution left = record.corrected(share, unwidened);
        return new RunningForecast(
                left.plus(job.hoursSoFar()),
                left,
                unwidened,
                job.hoursSoFar(),
                share,
                Math.exp(effects.jobEffect()),
                List.copyOf(tasks));
    }

    private Distribution atEnd(RunningTask running, String job, NormalMixture marginal, double trust) {
        double estimate = running.task().estimateHours();
        double logged = running.loggedHours();
        double floor = Math.log(logged / estimate);
        double[] own = logged > 0 ? marginal.quantilesAbove(floor) : marginal.quantiles();
        if (trust < 1) {
            double[] mixed = similarity.mixedWith(marginal.quantiles(), similarity.weights(running.task(), job));
            if (logged > 0) {
                mixed = Truncation.above(mixed, floor);
            }
            for (int m = 0; m < own.length; m++) {
                own[m] = trust * own[m] + (1 - trust) * mixed[m];
            }
        }
        double[] hours = new double[own.length];
        for (int m = 0; m < own.length; m++) {
            hours[m] = Math.max(logged, estimate * Math.exp(Math.min(8, own[m])));
        }
        return Distribution.ofQuantiles(hours);
    }

    /** What the shop's own stored forecasts taught. */
    public SelfCalibration record() {
        return record;
    }

    /** Finished tasks of a kind this calibration learnt from. */
    public int observationsOf(String kind) {
        return base.observationsOf(kind);
    }

    /** What was left out or changed, and why. */
    public List<Note> notes() {
        return learnt.notes();
    }

    /** Site conditions with enough history to count. */
    public List<String> conditions() {
        return base.conditions();
    }

    /** What a condition does and how much is known of it; the same for one that does not count yet or was never met. */
    public ConditionEffect conditionEffect(String condition) {
        Set<String> jobs = new TreeSet<>();
        Set<String> otherJobs = new TreeSet<>();
        int tasks = 0;
        for (Observation task : learnt.tasks()) {
            boolean held = task.conditions().contains(condition);
            tasks += held ? 1 : 0;
            (held ? jobs : otherJobs).add(task.job());
        }
        Distribution factor =
                Distribution.ofLogRatios(base.conditionEffect(condition).quantiles(), 1);
        return new ConditionEffect(
                condition,
                base.conditions().contains(condition),
                tasks,
                jobs.size(),
                learnt.size() - tasks,
                otherJobs.size(),
                factor.low80(),
                factor.median(),
                factor.high80());
    }

    /** The figures of the fit. */
    public ModelFigures figures() {
        ModelPoint mode = base.mode();
        return new ModelFigures(
                learnt.size(),
                base.settings().priors().level() + mode.coefficients()[0],
                base.settings().base().slope() ? mode.coefficients()[1] : 0,
                base.sd(0),
                base.sd(1),
                base.sd(2),
                base.sd(3),
                mode.logPosterior());
    }

    /** Effect of a kind on ln(actual/estimate), shrunk; 0 for one never met. */
    public double kindEffect(String kind) {
        return base.kindEffect(kind);
    }

    /** For each person how often actual hours equal the estimate that was shown, in alphabetical order. */
    public List<CopiedHours> copiedHours() {
        Map<String, int[]> counts = new TreeMap<>();
        for (Observation task : learnt.tasks()) {
            boolean equal = Math.abs(task.actualHours() - task.shownEstimate()) < HALF_A_MINUTE;
            for (WorkerShare part : task.workers()) {
                int[] count = counts.computeIfAbsent(part.worker(), worker -> new int[2]);
                count[0]++;
                count[1] += equal ? 1 : 0;
            }
        }
        List<CopiedHours> result = new ArrayList<>();
        counts.forEach((worker, count) -> result.add(new CopiedHours(worker, count[0], count[1])));
        return List.copyOf(result);
    }

    private LearntTasks nothing() {
        return new LearntTasks(List.of(), new double[0], List.of());
    }

    private static double[] ones(int count) {
        double[] ones = new double[count];
        java.util.Arrays.fill(ones, 1);
        return ones;
    }
}
