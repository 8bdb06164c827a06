package org.tallywright.daylog;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * Logs days. A save is one transaction: all rows of a day are stored or none, so that a save cut off at any moment left
 * the day as it was. It may be repeated without harm, because each row carries the id that its page made for it.
 */
@Service
public class DayLog {
    private final Entries entries;
    private final Places places;
    private final DayReads reads;
    private final LooseEnds looseEnds;
    private final TaskDesk tasks;
    private final ClosedJobs closedJobs;
    private final Trail trail;
    private final ShopClock clock;

    DayLog(
            Entries entries,
            Places places,
            DayReads reads,
            LooseEnds looseEnds,
            TaskDesk tasks,
            ClosedJobs closedJobs,
            Trail trail,
            ShopClock clock) {
        this.entries = entries;
        this.places = places;
        this.reads = reads;
        this.looseEnds = looseEnds;
        this.tasks = tasks;
        this.closedJobs = closedJobs;
        this.trail = trail;
        this.clock = clock;
    }

    /** Whether that person's hours are this one's to see and to log. */
    public static boolean mayLog(SignedIn me, UUID person) {
        return me.is(Role.OWNER, Role.LEAD)
                || me.is(Role.HELPER) && me.personId().equals(person);
    }

    /**
     * Stores the day, or says why not and stores nothing.
     *
     * @throws NotHere where the person's hours are not this one's to log
     */
    @Transactional
    public DayOutcome save(SaveDay day) {
        if (!mayLog(day.by(), day.person())) {
            throw new NotHere("day");
        }
        List<Objection> fixed = lockAll(day);
        List<UUID> ids = day.rows().stream().map(TypedRow::id).toList();
        List<Entry> stored = entries.ofDayOr(day.person(), day.date(), ids);
        Map<Target, Place> known = places.of(targets(day));
        DayPlan plan = new DayPlan(day, stored, entries.deletedAmong(ids), known);
        DayChecks checks = new DayChecks(day.date(), clock.today(), plan.lines, plan.removed);
        List<Objection> still = plan.changesNothing() ? List.of() : fixed;
        List<Objection> objections = Stream.of(still, day.objections(), plan.objections, checks.objections)
                .flatMap(List::stream)
                .toList();
        Set<String> answered = new HashSet<>(day.answers());
        if (checks.questions.stream().anyMatch(Question::holds)) {
            answered.addAll(reads.answers(day.person(), day.date()));
        }
        List<Question> holding = checks.holding(answered);
        if (!objections.isEmpty() || !holding.isEmpty() || !plan.conflicts.isEmpty()) {
            return new DayOutcome.Held(objections, holding, plan.conflicts);
        }
        return new DayOutcome.Saved(write(day, plan, checks), checks.minutes());
    }

    /** Holds the days that a save touches; says of each week that stands still that it does. */
    private List<Objection> lockAll(SaveDay day) {
        Stream<LocalDate> dates = Stream.of(day.date());
        if (day.mayMove()) {
            dates = Stream.concat(
                    dates,
                    day.rows().stream()
                            .flatMap(row -> entries.find(row.id()).stream())
                            .map(Entry::date));
        }
        return dates.distinct()
                .sorted()
                .map(date -> entries.lock(day.person(), date))
                .filter(WeekState::fixed)
                .map(week -> new Objection(null, "", week.refusal()))
                .distinct()
                .toList();
    }

    private static List<Target> targets(SaveDay day) {
        return day.rows().stream()
                .map(TypedRow::content)
                .filter(Objects::nonNull)
                .map(Content::target)
                .distinct()
                .toList();
    }

    private List<Change> write(SaveDay day, DayPlan plan, DayChecks checks) {
        UUID by = day.by().personId();
        Instant now = clock.now();
        if (plan.changesNothing()) {
            reads.keepAnswers(day.person(), day.date(), given(day, checks), by, now);
            return List.of();
        }
        trail.by(by);
        List<Change> changes = new ArrayList<>();
        entries.delete(plan.removed, by, now);
        plan.removed.forEach(entry -> changes.add(new Change(Change.Act.DELETE, entry.id(), entry.version())));
        entries.update(plan.changed.entrySet().stream()
                .map(change -> changed(day.date(), change.getKey(), change.getValue(), plan))
                .toList());
        plan.changed
                .values()
                .forEach(entry -> changes.add(new Change(Change.Act.UPDATE, entry.id(), entry.version() + 1)));
        entries.insert(
                plan.created.stream().map(row -> created(day, row, plan, now)).toList());
        plan.created.forEach(row -> changes.add(new Change(Change.Act.INSERT, row.id(), 0)));
        reads.keepAnswers(day.person(), day.date(), given(day, checks), by, now);
        begin(plan, day.date(), by);
        closedJobs.touched(touched(plan));
        return changes;
    }

    private static Stream<Place> touched(DayPlan plan) {
        Stream<Place> before = Stream.concat(plan.removed.stream(), plan.changed.values().stream())
                .map(Entry::place);
        Stream<Place> now = Stream.concat(plan.created.stream(), plan.changed.keySet().stream())
                .map(plan::place);
        return Stream.concat(before, now);
    }

    /** Hours on a planned task mean that it has begun. Always in one order, so that two saves never wait in a ring. */
    private void begin(DayPlan plan, LocalDate date, UUID by) {
        plan.lines.stream()
                .filter(DayChecks.Line::fresh)
                .map(DayChecks.Line::place)
                .filter(Place::planned)
                .distinct()
                .sorted(Comparator.comparing(Place::number)
                        .thenComparing(place -> place.target().code()))
                .forEach(place -> tasks.workedOn(
                        Objects.requireNonNull(place.jobId()),
                        Objects.requireNonNull(place.target().taskId()),
                        date,
                        by));
    }

    /** The questions that this save answers, by a tap or by the way the hours were typed. */
    private List<String> given(SaveDay day, DayChecks checks) {
        Set<String> meant = checks.meant();
        Stream<Question> asked = checks.questions.stream();
        if (!day.answers().isEmpty()) {
            asked = Stream.concat(asked, looseEnds.of(day.person(), day.date()).stream());
        }
        return Stream.concat(asked.map(Question::key).filter(day.answers()::contains), meant.stream())
                .distinct()
                .toList();
    }

    private static Entries.NewEntry created(SaveDay day, TypedRow row, DayPlan plan, Instant now) {
        return new Entries.NewEntry(
                row.id(),
                day.person(),
                day.date(),
                Objects.requireNonNull(row.content()),
                plan.place(row).jobId(),
                day.by().personId(),
                now);
    }

    private static Entries.ChangedEntry changed(LocalDate date, TypedRow row, Entry entry, DayPlan plan) {
        return new Entries.ChangedEntry(
                entry.id(),
                entry.version(),
                date,
                Objects.requireNonNull(row.content()),
                plan.place(row).jobId());
    }

    /**
     * Takes an entry off its day; a repeat changes nothing.
     *
     * @throws NotHere for an entry that never was, or is not this person's to see
     * @throws Stale where it was changed after it was shown
     */
    @Transactional
    public Removed delete(UUID id, int version, SignedIn by) {
        Entry entry = entries.find(id).orElse(null);
        if (entry == null) {
            return reads.deleted(id)
                    .filter(gone -> mayLog(by, gone.person()))
                    .orElseThrow(() -> new NotHere("time entry"));
        }
        if (!mayLog(by, entry.personId())) {
            throw new NotHere("time entry");
        }
        WeekState week = entries.lock(entry.personId(), entry.date());
        if (week.fixed()) {
            throw new Refused(week.refusal());
        }
        if (entry.version() != version) {
            throw Said.stale(entry, null);
        }
        trail.by(by.personId());
        entries.delete(List.of(entry), by.personId(), clock.now());
        return new Removed(entry.id(), entry.personId(), entry.date(), version);
    }

    /** An entry that was taken off its day. */
    public record Removed(UUID id, UUID person, LocalDate date, int version) {
        public Change change() {
            return new Change(Change.Act.DELETE, id, version);
        }
    }
}
