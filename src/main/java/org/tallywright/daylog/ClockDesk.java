package org.tallywright.daylog;

import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/**
 * Everybody's own clock. It is optional: it measures, and what it measured is offered on the sheet of its day. Each act may
 * be repeated without harm, and an act of a page that no longer knows what runs changes nothing.
 */
@Service
public class ClockDesk {
    private final ClockRuns runs;
    private final Entries entries;
    private final Places places;
    private final DayLog log;
    private final Trail trail;
    private final ShopClock clock;

    ClockDesk(ClockRuns runs, Entries entries, Places places, DayLog log, Trail trail, ShopClock clock) {
        this.runs = runs;
        this.entries = entries;
        this.places = places;
        this.log = log;
        this.trail = trail;
        this.clock = clock;
    }

    /** One's own runs that are still to be dealt with, whatever their day. */
    public List<ClockRun> open(UUID person) {
        return runs.open(person);
    }

    /**
     * What became of a start.
     *
     * @param run what runs now; null where a page that was used before met a clock at rest
     * @param met whether the page did not know of it, so that nothing was started
     */
    public record Started(@Nullable ClockRun run, boolean met) {}

    /**
     * Starts the clock; one that runs on something else stops at that moment.
     *
     * @param id made by the page; a second start with it is a repeat
     * @param seen the run that the page showed as running, or null
     * @throws Refused where hours on that could not be logged
     */
    @Transactional
    public Started start(UUID id, @Nullable UUID seen, Target target, HourClass hourClass, SignedIn me) {
        UUID person = me.personId();
        runs.lock(person);
        ClockRun running = running(person);
        ClockRun known = runs.find(id).orElse(null);
        if (known != null) {
            if (!known.personId().equals(person)) {
                throw new NotHere("clock");
            }
            boolean repeat = known.on(target, hourClass) && known.runs();
            return new Started(running, !repeat);
        }
        if (running != null && running.on(target, hourClass) && !ClockRule.forgotten(running, clock)) {
            return new Started(running, false);
        }
        if (running != null && !running.id().equals(seen)) {
            return new Started(running, true);
        }
        LocalDate today = clock.today();
        Place place = allowed(target, hourClass, person, today);
        trail.by(person);
        if (running != null) {
            end(running);
        }
        runs.insert(new ClockRuns.NewRun(id, person, today, target, hourClass, place.jobId(), clock.now()));
        return new Started(runs.find(id).orElseThrow(), false);
    }

    private @Nullable ClockRun running(UUID person) {
        return runs.open(person).stream().filter(ClockRun::runs).findFirst().orElse(null);
    }

    private Place allowed(Target target, HourClass hourClass, UUID person, LocalDate today) {
        Place place = places.of(List.of(target)).get(target);
        if (place == null) {
            throw new Refused("This is not here any more. Choose something else for the clock.");
        }
        if (place.closed() && hourClass != HourClass.CALL_BACK) {
            throw new Refused(place.number() + " is closed. The clock runs there for a call-back only.");
        }
        if (place.lost()) {
            throw new Refused(place.number() + " was lost. Its hours go to the shop's lost bids.");
        }
        WeekState week = entries.lock(person, today);
        if (week.fixed()) {
            throw new Refused(week.refusal());
        }
        return place;
    }

    /** A forgotten one ends too, but nobody knows when it should have. */
    private void end(ClockRun running) {
        runs.end(running.id(), clock.now(), !ClockRule.forgotten(running, clock));
    }

    /** Stops a run; a repeat changes nothing. */
    @Transactional
    public ClockRun stop(UUID id, SignedIn me) {
        ClockRun run = own(id, me);
        if (run.runs()) {
            trail.by(me.personId());
            end(run);
        }
        return runs.find(id).orElseThrow();
    }

    /**
     * Says of a clock that has run for long that it runs rightly.
     *
     * @throws Refused after midnight, when its day is over
     */
    @Transactional
    public ClockRun stillOn(UUID id, SignedIn me) {
        ClockRun run = own(id, me);
        if (run.runs() && ClockRule.pastItsDay(run, clock)) {
            throw new Refused("Midnight has passed since this clock was started. Say when you stopped that day.");
        }
        if (run.runs()) {
            trail.by(me.personId());
            runs.confirm(id, clock.now());
        }
        return runs.find(id).orElseThrow();
    }

    /**
     * Says when a forgotten clock should have been stopped. At most what is typed is offered.
     *
     * @throws NotUnderstood for what is neither a time nor a length, or more than can have been
     */
    @Transactional
    public ClockRun ended(UUID id, String typed, SignedIn me) {
        ClockRun run = own(id, me);
        if (run.endKnown() || run.droppedAt() != null) {
            return run;
        }
        Instant end = new ClockEnd(run.startedAt(), clock.zone()).read(typed);
        Instant latest = ClockRule.latest(run, clock);
        if (end.isAfter(latest)) {
            int most = Math.toIntExact(
                    java.time.Duration.between(run.startedAt(), latest).toMinutes());
            throw new NotUnderstood("This clock can have run for " + Hours.ofMinutes(most)
                    + " at most on its day. What came after midnight is logged on its own day.");
        }
        trail.by(me.personId());
        runs.end(id, end, true);
        return runs.find(id).orElseThrow();
    }

    /** Throws a run away, and with it the others of the same offer; a repeat changes nothing. */
    @Transactional
    public ClockRun drop(UUID id, SignedIn me) {
        ClockRun run = own(id, me);
        if (run.droppedAt() == null && run.entryId() == null) {
            trail.by(me.personId());
            List<ClockRun> all = run.offered()
                    ? runs.ofDay(run.personId(), run.date()).stream()
                            .filter(other -> other.offered() && other.alike(run))
                            .toList()
                    : List.of(run);
            runs.drop(all.stream().map(ClockRun::id).toList(), clock.now());
        }
        return run;
    }

    /** Takes that back. */
    @Transactional
    public ClockRun keep(UUID id, SignedIn me) {
        ClockRun run = own(id, me);
        if (run.droppedAt() != null) {
            trail.by(me.personId());
            runs.keep(runs.ofDay(run.personId(), run.date()).stream()
                    .filter(other -> other.alike(run) && run.droppedAt().equals(other.droppedAt()))
                    .map(ClockRun::id)
                    .toList());
        }
        return run;
    }

    /** The run, and no other device at it meanwhile. */
    private ClockRun own(UUID id, SignedIn me) {
        runs.lock(me.personId());
        return find(id, me.personId());
    }

    private ClockRun find(UUID id, UUID person) {
        return runs.find(id).filter(run -> run.personId().equals(person)).orElseThrow(() -> new NotHere("clock"));
    }

    /** What an offer that is to be put in says: one of its runs, as one's own. */
    public ClockRun of(UUID id, SignedIn me) {
        return find(id, me.personId());
    }

    /**
     * An offer put into a row of the sheet.
     *
     * @param entry the row's id
     * @param run one of its runs
     * @param minutes what the page said it comes to
     */
    public record Take(UUID entry, UUID run, int minutes) {}

    /**
     * Saves a day with the offers that were put into its rows: both or neither.
     *
     * @throws Refused where an offer has come to something else meanwhile, or is gone
     */
    @Transactional
    public DayOutcome save(SaveDay day, List<Take> takes) {
        UUID person = day.by().personId();
        runs.lock(person);
        Map<UUID, List<UUID>> taken = new LinkedHashMap<>();
        for (Take take : takes) {
            boolean there = day.rows().stream().anyMatch(row -> row.id().equals(take.entry()) && row.content() != null);
            if (there) {
                taken.put(take.entry(), offered(day, take));
            }
        }
        DayOutcome outcome = log.save(day);
        if (outcome instanceof DayOutcome.Saved) {
            trail.by(person);
            taken.forEach((entry, ids) -> runs.take(ids, entry));
        }
        return outcome;
    }

    private List<UUID> offered(SaveDay day, Take take) {
        ClockRun one = find(take.run(), day.by().personId());
        if (!one.date().equals(day.date()) || !one.personId().equals(day.person())) {
            throw new NotHere("clock");
        }
        List<ClockRun> all = runs.ofDay(one.personId(), one.date()).stream()
                .filter(run -> run.alike(one) && (run.offered() || take.entry().equals(run.entryId())))
                .toList();
        String what = "The clock on " + one.place().inWords();
        if (all.isEmpty()) {
            throw new Refused(what + " was put in or thrown away already.");
        }
        int now = ClockRun.minutes(all);
        if (now != take.minutes()) {
            throw new Refused(
                    what + " has come to " + Hours.ofMinutes(now) + " meanwhile. Look at it, then put it in.");
        }
        return all.stream().map(ClockRun::id).toList();
    }
}
