package org.tallywright.daylog;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/**
 * Takes a save back with the help of the trail: what was new goes, what was changed gets its words before, what was taken
 * off comes back as a new entry. Each is an act of its own in the trail; nothing in it is rubbed out.
 */
@Service
public class TakeBack {
    /** The row as the trail kept it, read by the same names as an entry of today. */
    private static final String BEFORE = """
            with b as (select x.* from audit_entry a, jsonb_populate_record(null::time_entry, a.before) x
                where a.subject = 'time_entry' and a.subject_id = ? and a.act = ?
                    and coalesce(a.after, a.before) ->> 'version' = ? order by a.id desc limit 1)
            select e.*, w.name as person_name, l.name as logged_by_name,
                j.number, j.title, j.state as job_state, j.opened_on, s.one_way_minutes,
                t.name as task_name, t.state as task_state, null as piece_name, g.name as stage_name, k.place, k.hour_class as usual_class,
                0 as so_far
            from b e join person w on w.id = e.person_id join person l on l.id = e.logged_by
            left join job j on j.id = e.job_id left join site s on s.id = j.site_id left join task t on t.id = e.task_id
            left join stage g on g.id = t.stage_id left join task_kind k on k.id = t.task_kind_id""";

    private final JdbcClient jdbc;
    private final Entries entries;
    private final ClockRuns clockRuns;
    private final ClosedJobs closedJobs;
    private final Trail trail;
    private final ShopClock clock;

    TakeBack(
            JdbcClient jdbc,
            Entries entries,
            ClockRuns clockRuns,
            ClosedJobs closedJobs,
            Trail trail,
            ShopClock clock) {
        this.jdbc = jdbc;
        this.entries = entries;
        this.clockRuns = clockRuns;
        this.closedJobs = closedJobs;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * Takes back the changes of one day, all or none; a repeat changes nothing.
     *
     * @throws Stale where an entry was changed again since
     * @throws Refused where the earlier hours no longer fit the day
     */
    @Transactional
    public void undo(UUID person, LocalDate date, List<Change> changes, SignedIn by) {
        if (!DayLog.mayLog(by, person)) {
            throw new NotHere("day");
        }
        WeekState week = entries.lock(person, date);
        if (week.fixed()) {
            throw new Refused(week.refusal());
        }
        trail.by(by.personId());
        try {
            changes.forEach(change -> undo(person, date, change, by));
            jdbc.sql("set constraints all immediate").update();
        } catch (DataAccessException e) {
            throw new Refused("The hours before no longer fit this day. Change them by hand.");
        }
    }

    private void undo(UUID person, LocalDate date, Change change, SignedIn by) {
        switch (change.act()) {
            case INSERT ->
                entries.find(change.id()).ifPresent(entry -> {
                    entries.delete(List.of(asSaved(entry, person, date, change, null)), by.personId(), clock.now());
                    closedJobs.touched(Stream.of(entry.place()));
                });
            case UPDATE -> putBack(person, date, change);
            case DELETE -> bringBack(person, date, change, by);
        }
    }

    private void putBack(UUID person, LocalDate date, Change change) {
        Entry before = before(change, "update");
        Entry now = entries.find(change.id()).orElseThrow(() -> Said.stale(null, Said.of(before)));
        boolean done = now.version() == change.version() + 1 && now.content().equals(before.content());
        if (!done) {
            asSaved(now, person, date, change, Said.of(before));
            entries.update(List.of(new Entries.ChangedEntry(
                    now.id(),
                    now.version(),
                    before.date(),
                    before.content(),
                    before.place().jobId())));
            closedJobs.touched(Stream.of(now.place(), before.place()));
        }
    }

    /** The old id stays deleted; the new one is made from it, so that a second tap finds it there. */
    private void bringBack(UUID person, LocalDate date, Change change, SignedIn by) {
        Entry before = before(change, "delete");
        if (!before.personId().equals(person) || !before.date().equals(date)) {
            throw new NotHere("time entry");
        }
        UUID id = UUID.nameUUIDFromBytes(("back:" + change.id()).getBytes(StandardCharsets.UTF_8));
        if (entries.find(id).isEmpty() && entries.deletedAmong(List.of(id)).isEmpty()) {
            entries.insert(List.of(new Entries.NewEntry(
                    id, person, before.date(), before.content(), before.place().jobId(), by.personId(), clock.now())));
            clockRuns.broughtBack(change.id(), id);
            closedJobs.touched(Stream.of(before.place()));
        }
    }

    private static Entry asSaved(Entry entry, UUID person, LocalDate date, Change change, @Nullable Said wanted) {
        if (!entry.personId().equals(person) || !entry.date().equals(date)) {
            throw new NotHere("time entry");
        }
        if (entry.version() != change.version()) {
            throw Said.stale(entry, wanted);
        }
        return entry;
    }

    private Entry before(Change change, String act) {
        return jdbc.sql(BEFORE)
                .params(change.id().toString(), act, Integer.toString(change.version()))
                .query(Entries::read)
                .optional()
                .orElseThrow(() -> new NotHere("time entry"));
    }
}
