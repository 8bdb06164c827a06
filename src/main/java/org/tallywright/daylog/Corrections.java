package org.tallywright.daylog;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * Corrects locked weeks. What was locked stays as it is; beside it stands a new time entry of that day with minutes more
 * or less, dated and with its reason, so that every sum of hours holds it.
 */
@Service
public class Corrections {
    private final JdbcClient jdbc;
    private final Entries entries;
    private final Places places;
    private final WeekDesk weeks;
    private final ClosedJobs closedJobs;
    private final Trail trail;
    private final ShopClock clock;

    Corrections(
            JdbcClient jdbc,
            Entries entries,
            Places places,
            WeekDesk weeks,
            ClosedJobs closedJobs,
            Trail trail,
            ShopClock clock) {
        this.jdbc = jdbc;
        this.entries = entries;
        this.places = places;
        this.weeks = weeks;
        this.closedJobs = closedJobs;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * A correction as it is wanted.
     *
     * @param id made by the page, so that a repeat is recognised
     * @param really what the hours on that thing and class really came to that day
     */
    public record Wanted(
            UUID id, UUID person, LocalDate date, Target target, HourClass hourClass, Hours really, String reason) {}

    /** A correction as it was made. */
    public record Made(
            UUID id,
            LocalDate date,
            String went,
            HourClass hourClass,
            int minutes,
            String reason,
            String by,
            Instant at) {}

    public static boolean may(SignedIn me) {
        return me.is(Role.OWNER, Role.LEAD);
    }

    /** @return the minutes more or less that it came to */
    @Transactional
    public int correct(Wanted wanted, SignedIn by) {
        if (!may(by)) {
            throw new NotHere("week");
        }
        entries.lock(wanted.person(), wanted.date());
        Entry known = entries.find(wanted.id()).orElse(null);
        if (known != null) {
            if (!known.correction() || !known.personId().equals(wanted.person())) {
                throw new NotHere("correction");
            }
            return known.content().minutes();
        }
        if (weeks.of(wanted.person(), wanted.date()).state() != WeekState.LOCKED) {
            throw new Refused("", "This week is not locked. Change the day itself.");
        }
        Place place = places.of(Set.of(wanted.target())).get(wanted.target());
        if (place == null) {
            throw new Refused("what", "This is not here any more. Choose something else.");
        }
        int minutes = wanted.really().minutes() - now(wanted);
        if (minutes == 0) {
            throw new Refused("time", "That is what stands there already.");
        }
        guardDay(wanted, minutes);
        trail.by(by.personId());
        entries.insertCorrection(new Entries.NewEntry(
                wanted.id(),
                wanted.person(),
                wanted.date(),
                new Content(wanted.target(), wanted.hourClass(), minutes, null, "", wanted.reason()),
                place.jobId(),
                by.personId(),
                clock.now()));
        closedJobs.touched(Stream.of(place));
        return minutes;
    }

    /** What stands there now, corrections included. */
    private int now(Wanted wanted) {
        return jdbc.sql("""
                        select coalesce(sum(minutes), 0)::int from time_entry
                        where person_id = :person and on_date = :date and hour_class = :class
                            and task_id is not distinct from cast(:task as uuid)
                            and (cast(:task as uuid) is not null or job_id is not distinct from cast(:job as uuid))
                            and account is not distinct from cast(:account as text)""")
                .param("person", wanted.person())
                .param("date", wanted.date())
                .param("class", wanted.hourClass().code())
                .param("task", wanted.target().taskId())
                .param("job", wanted.target().jobId())
                .param("account", Columns.of(wanted.target().account()))
                .query(Integer.class)
                .single();
    }

    private void guardDay(Wanted wanted, int more) {
        int day = jdbc.sql("select coalesce(sum(minutes), 0)::int from time_entry where person_id = ? and on_date = ?")
                .params(wanted.person(), wanted.date())
                .query(Integer.class)
                .single();
        if (day + more > DayChecks.DAY) {
            throw new Refused("time", "The day would come to " + Hours.ofMinutes(day + more) + ". A day has 24 hours.");
        }
    }

    /** The corrections of one person's days, oldest day first. */
    public List<Made> between(UUID person, LocalDate from, LocalDate to) {
        return jdbc.sql("""
                        select e.id, e.on_date, e.hour_class, e.minutes, e.reason, e.logged_at, b.name as by_name,
                            coalesce(t.name || coalesce(', ' || p.name, '') || ', ', '') || j.number as on_job, e.account
                        from time_entry e
                        join person b on b.id = e.logged_by
                        left join job j on j.id = e.job_id
                        left join task t on t.id = e.task_id
                        left join piece p on p.id = t.piece_id
                        where e.correction and e.person_id = ? and e.on_date between ? and ?
                        order by e.on_date, e.logged_at, e.id""")
                .params(person, from, to)
                .query((row, n) -> new Made(
                        row.getObject("id", UUID.class),
                        row.getObject("on_date", LocalDate.class),
                        went(row.getString("on_job"), row.getString("account")),
                        HourClass.of(row.getString("hour_class")),
                        row.getInt("minutes"),
                        row.getString("reason"),
                        row.getString("by_name"),
                        row.getTimestamp("logged_at").toInstant()))
                .list();
    }

    private static String went(@Nullable String job, @Nullable String account) {
        return job == null ? "Shop: " + account : job;
    }
}
