package org.tallywright.calibration;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.tallywright.calibration.engine.HoursOnNoLine;
import org.tallywright.calibration.engine.JobHours;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;

/**
 * All that a calibration learns from, as it was when it was made.
 *
 * @param tasks finished tasks of finished jobs, oldest first
 * @param jobs finished jobs, oldest first
 * @param rates starting unit hours of each task kind; past and planned tasks are measured against the same ones, so that a
 *     new starting rate corrects nothing twice
 * @param ratesBefore what the starting rates were before, the oldest first, in the unit of today
 */
record Past(
        List<Observation> tasks, List<PastJob> jobs, Map<UUID, Double> rates, Map<UUID, List<RateBefore>> ratesBefore) {

    /** One kept before starting rates had a past has none. */
    Past {
        ratesBefore = ratesBefore == null ? Map.of() : ratesBefore;
    }

    static Past nothing() {
        return new Past(List.of(), List.of(), Map.of(), Map.of());
    }

    /** The part of it that such jobs make. */
    Past of(Predicate<PastJob> some) {
        List<PastJob> these = jobs.stream().filter(some).toList();
        Set<String> keys = these.stream().map(PastJob::key).collect(Collectors.toSet());
        return new Past(tasks.stream().filter(task -> keys.contains(task.job())).toList(), these, rates, ratesBefore);
    }

    Map<String, List<Observation>> byJob() {
        return tasks.stream().collect(Collectors.groupingBy(Observation::job));
    }

    /** What could be known on the eve of that day: the jobs closed by then, measured against the starting rates of then. */
    Past before(LocalDate day) {
        Past known = of(job -> job.closedOn().isBefore(day));
        Map<String, Rebase> changed = changedSince(day);
        if (changed.isEmpty()) {
            return known;
        }
        Map<UUID, Double> then = new TreeMap<>(rates);
        changed.forEach((kind, rate) -> then.put(UUID.fromString(kind), rate.then()));
        return new Past(known.tasks.stream().map(task -> rebased(task, changed)).toList(), known.jobs, then, Map.of());
    }

    /** The tasks of a job as they were planned, at the starting rates on the eve of that day. */
    List<PlannedTask> planned(PastJob job, LocalDate day) {
        Map<String, Rebase> changed = changedSince(day);
        return job.lines().stream().map(line -> line.planned(changed)).toList();
    }

    /** Whether the starting rates on the eve of both days were the same. */
    boolean sameRates(LocalDate one, LocalDate other) {
        return changedSince(one).equals(changedSince(other));
    }

    /** @param now the rate of today, which a task whose unit was changed since does not have */
    record Rebase(double then, double now) {
        double factor() {
            return then / now;
        }
    }

    private static Observation rebased(Observation task, Map<String, Rebase> changed) {
        Rebase rate = changed.get(task.kind());
        return rate == null || task.startingUnitHours() != rate.now() ? task : task.rebased(rate.factor());
    }

    /** The kinds whose starting rate on the eve of that day was another than today's. */
    private Map<String, Rebase> changedSince(LocalDate day) {
        Map<String, Rebase> changed = new TreeMap<>();
        ratesBefore.forEach((kind, earlier) -> {
            double now = rates.getOrDefault(kind, 0.0);
            earlier.stream()
                    .filter(rate -> !rate.until().isBefore(day))
                    .findFirst()
                    .filter(rate -> now > 0 && rate.unitHours() != now)
                    .ifPresent(rate -> changed.put(kind.toString(), new Rebase(rate.unitHours(), now)));
        });
        return changed;
    }

    /** The same data as the same text, on any machine: what the fingerprint is taken of. */
    String canonical() {
        StringBuilder text = new StringBuilder();
        for (Observation task : tasks) {
            text.append(task.task()).append(' ').append(task.job()).append(' ').append(task.kind());
            task.workers()
                    .forEach(part ->
                            text.append(' ').append(part.worker()).append(' ').append(part.share()));
            text.append(' ').append(task.estimateHours()).append(' ').append(task.actualHours());
            text.append(' ').append(task.shownHours());
            text.append(' ')
                    .append(task.done())
                    .append(new TreeSet<>(task.conditions()))
                    .append('\n');
        }
        for (PastJob job : jobs) {
            text.append(job.key()).append(' ').append(job.knownBy()).append(' ').append(job.closedOn());
            text.append(' ').append(job.estimate()).append(' ').append(job.lineHours());
            text.append(new TreeMap<>(job.otherHours())).append(job.bidHours()).append(' ');
            text.append(job.labourRate());
            if (job.atBid() != null) {
                text.append(' ').append(job.atBid());
            }
            job.atStages().forEach(stage -> text.append(' ').append(stage));
            text.append('\n');
        }
        text.append(new TreeMap<>(rates));
        return ratesBefore.isEmpty()
                ? text.toString()
                : text.append(new TreeMap<>(ratesBefore)).toString();
    }

    /** A file of past tasks says nothing of hours on no line. */
    HoursOnNoLine onNoLine() {
        return HoursOnNoLine.learn(jobs.stream()
                .filter(job -> !job.imported())
                .map(job -> new JobHours(job.key(), job.lineHours(), job.otherHours()))
                .toList());
    }
}
