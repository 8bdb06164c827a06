package org.tallywright.calibration;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.WorkRows.HoursRow;
import org.tallywright.calibration.WorkRows.JobRow;
import org.tallywright.calibration.WorkRows.PastRow;
import org.tallywright.calibration.WorkRows.TaskRow;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.WorkerShare;
import org.tallywright.shared.ShopClock;

/** Puts the shop's finished work together: closed jobs, and what was imported; without the jobs somebody left out. */
@Component
class PastReader {
    private final WorkRows rows;
    private final SaidRows said;
    private final JdbcClient jdbc;
    private final ShopClock clock;

    PastReader(WorkRows rows, SaidRows said, JdbcClient jdbc, ShopClock clock) {
        this.rows = rows;
        this.said = said;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    Past read() {
        Past all = everything();
        Set<String> leftOut = leftOut();
        return leftOut.isEmpty() ? all : all.of(job -> !leftOut.contains(job.key()));
    }

    @Transactional(readOnly = true)
    Past everything() {
        List<Observation> tasks = new ArrayList<>();
        List<PastJob> jobs = new ArrayList<>();
        closed(tasks, jobs);
        imported(tasks, jobs);
        tasks.sort(Comparator.comparing(Observation::done).thenComparing(Observation::task));
        jobs.sort(Comparator.comparing(PastJob::closedOn).thenComparing(PastJob::number));
        Map<UUID, Double> rates = new TreeMap<>();
        rows.rates().forEach(rate -> rates.put(rate.id(), rate.rate().doubleValue()));
        Map<UUID, List<RateBefore>> before = new TreeMap<>();
        rows.ratesBefore()
                .forEach(row -> before.computeIfAbsent(row.kind(), kind -> new ArrayList<>())
                        .add(new RateBefore(row.rate().doubleValue(), clock.dateOf(row.until()))));
        return new Past(List.copyOf(tasks), List.copyOf(jobs), rates, before);
    }

    Set<String> leftOut() {
        return jdbc.sql("select job_key from job_left_out").query(String.class).set();
    }

    private void closed(List<Observation> tasks, List<PastJob> jobs) {
        Set<UUID> unfamiliar = rows.unfamiliarJobs();
        Map<UUID, List<TaskRow>> byJob = rows.tasksOfClosedJobs().stream()
                .map(task -> unfamiliar.contains(task.jobId()) ? task.onUnfamiliar() : task)
                .collect(Collectors.groupingBy(TaskRow::jobId));
        Map<UUID, List<HoursRow>> hours =
                rows.hoursOfClosedJobs().stream().collect(Collectors.groupingBy(HoursRow::jobId));
        Said kept = said.read();
        for (JobRow job : rows.closedJobs()) {
            List<HoursRow> logged = hours.getOrDefault(job.id(), List.of());
            JobWork work = new JobWork(byJob.getOrDefault(job.id(), List.of()), logged);
            tasks.addAll(work.finished());
            jobs.add(new PastJob(
                    job.id().toString(),
                    job.number(),
                    job.title(),
                    false,
                    job.knownBy(),
                    job.closedOn(),
                    work.lines(),
                    work.lineHours(),
                    work.otherHours(),
                    job.bidHours() == null ? null : job.bidHours().doubleValue(),
                    job.labourRate(),
                    kept.atBid(job.id(), logged).orElse(null),
                    kept.atStages(job.id(), logged)));
        }
    }

    private void imported(List<Observation> tasks, List<PastJob> jobs) {
        Map<String, List<PastRow>> byJob = new LinkedHashMap<>();
        rows.imported()
                .forEach(row -> byJob.computeIfAbsent(key(row), key -> new ArrayList<>())
                        .add(row));
        byJob.forEach((key, rowsOfJob) -> {
            rowsOfJob.forEach(row -> tasks.add(observation(key, row)));
            jobs.add(job(key, rowsOfJob));
        });
    }

    private static String key(PastRow row) {
        return "import:" + row.batch() + ":" + row.job();
    }

    private static Observation observation(String key, PastRow row) {
        return new Observation(
                row.id().toString(),
                key,
                row.kind().toString(),
                row.personId() == null
                        ? List.of()
                        : WorkerShare.alone(row.personId().toString()),
                row.quantity().doubleValue(),
                row.rate().doubleValue(),
                row.actualMinutes() / 60.0,
                row.doneOn(),
                Set.of(),
                row.estimatedMinutes() == null ? null : row.estimatedMinutes() / 60.0);
    }

    private static PastJob job(String key, List<PastRow> rows) {
        LocalDate first = rows.stream()
                .map(row -> row.startedOn() == null ? row.doneOn() : row.startedOn())
                .min(Comparator.naturalOrder())
                .orElseThrow();
        LocalDate last = rows.stream()
                .map(PastRow::doneOn)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        return new PastJob(
                key,
                rows.get(0).job(),
                "",
                true,
                first,
                last,
                rows.stream()
                        .map(row -> new PastJob.Line(
                                row.id().toString(),
                                row.kind().toString(),
                                row.quantity().multiply(row.rate()).doubleValue(),
                                row.rate().doubleValue(),
                                Set.of()))
                        .toList(),
                rows.stream().mapToInt(PastRow::actualMinutes).sum() / 60.0,
                Map.of(),
                null,
                null,
                null,
                List.of());
    }
}
