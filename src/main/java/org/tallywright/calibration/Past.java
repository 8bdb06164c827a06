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

/**
 * All that a calibration learns from, as it was when it was made.
 *
 * @param tasks finished tasks of finished jobs, oldest first
 * @param jobs finished jobs, oldest first
 * @param rates starting unit hours of each task kind; past and planned tasks are measured against the same ones, so that a
 *     new starting rate corrects nothing twice
 */
record Past(List<Observation> tasks, List<PastJob> jobs, Map<UUID, Double> rates) {

    static Past nothing() {
        return new Past(List.of(), List.of(), Map.of());
    }

    /** The part of it that such jobs make. */
    Past of(Predicate<PastJob> some) {
        List<PastJob> these = jobs.stream().filter(some).toList();
        Set<String> keys = these.stream().map(PastJob::key).collect(Collectors.toSet());
        return new Past(tasks.stream().filter(task -> keys.contains(task.job())).toList(), these, rates);
    }

    Map<String, List<Observation>> byJob() {
        return tasks.stream().collect(Collectors.groupingBy(Observation::job));
    }

    Past before(LocalDate day) {
        return of(job -> job.closedOn().isBefore(day));
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
        return text.append(new TreeMap<>(rates)).toString();
    }

    /** A file of past tasks says nothing of hours on no line. */
    HoursOnNoLine onNoLine() {
        return HoursOnNoLine.learn(jobs.stream()
                .filter(job -> !job.imported())
                .map(job -> new JobHours(job.key(), job.lineHours(), job.otherHours()))
                .toList());
    }
}
