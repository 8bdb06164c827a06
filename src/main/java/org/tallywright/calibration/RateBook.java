package org.tallywright.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.WorkerShare;
import org.tallywright.catalog.SaveTaskKind;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKindDesk;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.people.People;
import org.tallywright.shared.Refused;
import org.tallywright.shared.UnitHours;

/** Hours per unit of each task kind: the starting rate, and what the shop's own finished work says. */
@Service
public class RateBook {
    private final Shelf shelf;
    private final CalibrationRows rows;
    private final TaskKinds kinds;
    private final TaskKindDesk desk;
    private final WorkRows work;
    private final People names;

    RateBook(Shelf shelf, CalibrationRows rows, TaskKinds kinds, TaskKindDesk desk, WorkRows work, People people) {
        this.shelf = shelf;
        this.rows = rows;
        this.kinds = kinds;
        this.desk = desk;
        this.work = work;
        this.names = people;
    }

    /**
     * @param madeAt null: nothing learnt yet
     * @param underWay how far a new calibration is, empty where none is being made
     */
    public record State(int tasks, int jobs, @Nullable Instant madeAt, String underWay) {}

    /**
     * @param typical the middle of the calibrated range, null while the shop has no calibration
     * @param low lower end of the range that holds four times in five
     * @param size hours of a task, at the starting rate, that the range is for
     * @param startingPercent how much of it is still the starting rate
     */
    public record Entry(
            TaskKindCard kind,
            @Nullable UnitHours typical,
            @Nullable UnitHours low,
            @Nullable UnitHours high,
            double size,
            int tasks,
            int jobs,
            int startingPercent,
            @Nullable Trend trend) {}

    /** A finished task of the kind. {@code jobNumber} has a page unless it was imported. */
    public record Point(LocalDate done, UnitHours took, String jobNumber, boolean imported) {}

    /** What the kind took on one job. */
    public record OnJob(
            String number,
            String title,
            boolean imported,
            int tasks,
            BigDecimal quantity,
            double hours,
            UnitHours took) {}

    /**
     * A kind that is counted as this one.
     *
     * @param tasks finished tasks of it that the calibration in use counts here
     * @param by who said so
     */
    public record Merged(String name, int tasks, Instant at, String by) {}

    public record KindHistory(Entry entry, List<Point> points, List<OnJob> jobs, List<Merged> merged) {}

    @Transactional(readOnly = true)
    public State state() {
        String underWay = rows.underWay()
                .map(row -> row.step().isEmpty() ? "Waiting to start" : row.step())
                .orElse("");
        return shelf.kept()
                .map(kept -> new State(
                        kept.figures().tasks(),
                        kept.figures().jobs(),
                        kept.row().madeAt(),
                        underWay))
                .orElse(new State(0, 0, null, underWay));
    }

    @Transactional(readOnly = true)
    public List<Entry> entries() {
        Map<UUID, List<Observation>> own = new HashMap<>();
        shelf.fitted()
                .past()
                .tasks()
                .forEach(task -> own.computeIfAbsent(UUID.fromString(task.kind()), kind -> new ArrayList<>())
                        .add(task));
        Map<UUID, Figures.KindRate> rates = rates();
        return kinds.all().stream()
                .filter(kind -> kind.active() || own.containsKey(kind.id()))
                .map(kind -> entry(kind, rates.get(kind.id()), own.getOrDefault(kind.id(), List.of())))
                .toList();
    }

    private Map<UUID, Figures.KindRate> rates() {
        Map<UUID, Figures.KindRate> rates = new HashMap<>();
        shelf.kept().ifPresent(kept -> kept.figures().kinds().forEach(rate -> rates.put(rate.kind(), rate)));
        return rates;
    }

    private static Entry entry(TaskKindCard kind, Figures.@Nullable KindRate rate, List<Observation> own) {
        if (rate == null) {
            return new Entry(kind, null, null, null, 0, 0, 0, 100, null);
        }
        return new Entry(
                kind,
                unitHours(rate.median()),
                unitHours(rate.low()),
                unitHours(rate.high()),
                rate.size(),
                rate.tasks(),
                rate.jobs(),
                (int) Math.round(100 * rate.startingShare()),
                Trend.of(own).orElse(null));
    }

    /** How many people's hours stand behind the calibration in use, as far as they are known. */
    @Transactional(readOnly = true)
    public long people() {
        return shelf.fitted().past().tasks().stream()
                .flatMap(task -> task.workers().stream())
                .map(WorkerShare::worker)
                .distinct()
                .count();
    }

    @Transactional(readOnly = true)
    public KindHistory history(UUID id) {
        TaskKindCard kind = kinds.card(id);
        Past past = shelf.fitted().past();
        List<Observation> own = past.tasks().stream()
                .filter(task -> task.kind().equals(id.toString()) && task.quantity() > 0)
                .toList();
        Map<String, PastJob> jobs = new HashMap<>();
        past.jobs().forEach(job -> jobs.put(job.key(), job));
        return new KindHistory(
                entry(kind, rates().get(id), own),
                own.stream()
                        .map(task -> {
                            PastJob job = jobs.get(task.job());
                            return new Point(
                                    task.done(),
                                    unitHours(task.actualHours() / task.quantity()),
                                    job == null ? "" : job.number(),
                                    job == null || job.imported());
                        })
                        .toList(),
                onJobs(own, jobs),
                kinds.mergedInto(id).stream().map(other -> merged(other, own)).toList());
    }

    private Merged merged(TaskKindCard other, List<Observation> own) {
        TaskKindCard.Merge merge = Objects.requireNonNull(other.merge());
        Set<String> its = work.tasksOfKind(other.id());
        int tasks = (int) own.stream().filter(task -> its.contains(task.task())).count();
        return new Merged(
                other.name(), tasks, merge.at(), names.named(merge.by()).name());
    }

    private static List<OnJob> onJobs(List<Observation> own, Map<String, PastJob> jobs) {
        Map<String, List<Observation>> byJob = new LinkedHashMap<>();
        own.forEach(task ->
                byJob.computeIfAbsent(task.job(), job -> new ArrayList<>()).add(task));
        List<OnJob> all = new ArrayList<>();
        for (String key : new LinkedHashSet<>(byJob.keySet())) {
            PastJob job = jobs.get(key);
            List<Observation> tasks = byJob.getOrDefault(key, List.of());
            if (job == null) {
                continue;
            }
            double quantity = tasks.stream().mapToDouble(Observation::quantity).sum();
            double hours = tasks.stream().mapToDouble(Observation::actualHours).sum();
            all.add(
                    0,
                    new OnJob(
                            job.number(),
                            job.title(),
                            job.imported(),
                            tasks.size(),
                            BigDecimal.valueOf(quantity)
                                    .round(new MathContext(6))
                                    .stripTrailingZeros(),
                            hours,
                            unitHours(hours / quantity)));
        }
        return all;
    }

    /**
     * Makes the calibrated middle the starting rate; the catalogue's word of it asks for the new calibration. Past and planned tasks are then measured against it, so what was learnt
     * is kept and nothing is corrected twice.
     *
     * @param version of the task kind that the page showed
     * @param shown the rate that the page showed
     * @param by who accepts it
     * @throws Refused where the calibration has changed since, or has nothing of the shop's own
     */
    @Transactional
    public void accept(UUID id, int version, UnitHours shown, String basis, UUID by) {
        TaskKindCard kind = kinds.card(id);
        Entry entry = entry(kind, rates().get(id), List.of());
        UnitHours rate = entry.typical();
        if (kind.unitHours().equals(shown)) {
            return;
        }
        if (rate == null || entry.tasks() == 0) {
            throw new Refused("The shop has no finished task of this kind yet; there is nothing to accept.");
        }
        if (!rate.equals(shown)) {
            throw new Refused("The calibrated rate is " + rate + " h by now. Look at it again, then accept it.");
        }
        SaveTaskKind accepted = new SaveTaskKind(
                id,
                version,
                kind.name(),
                kind.stageId(),
                kind.unit(),
                rate,
                kind.low() != null && kind.low().compareTo(rate) > 0 ? rate : kind.low(),
                kind.high() != null && kind.high().compareTo(rate) < 0 ? rate : kind.high(),
                kind.place(),
                kind.hourClass(),
                kind.drivers(),
                basis,
                kind.caution(),
                kind.cautionSource(),
                kind.waits(),
                java.util.Set.copyOf(kind.before()));
        desk.save(accepted, by);
    }

    /** Three figures that count are more than enough. */
    static UnitHours unitHours(double hours) {
        return UnitHours.of(BigDecimal.valueOf(hours).round(new MathContext(3)));
    }
}
