package org.tallywright.daylog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.people.People;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * Hands weeks in, approves and locks them. An approved week may be sent back; a locked one stays, and its hours change by
 * a correction only. The database keeps the same rules by itself.
 */
@Service
public class WeekDesk {
    private static final String SELECT = """
            select w.*, s.name as submitted_name, a.name as approved_name, l.name as locked_name from work_week w
            left join person s on s.id = w.submitted_by
            left join person a on a.id = w.approved_by
            left join person l on l.id = w.locked_by
            """;
    /** What has to be so before a week comes to a state, and who may take it there. */
    private static final Map<WeekState, List<WeekState>> FROM = Map.of(
            WeekState.SUBMITTED, List.of(WeekState.OPEN),
            WeekState.APPROVED, List.of(WeekState.OPEN, WeekState.SUBMITTED),
            WeekState.LOCKED, List.of(WeekState.APPROVED),
            WeekState.OPEN, List.of(WeekState.SUBMITTED, WeekState.APPROVED));

    private final JdbcClient jdbc;
    private final Entries entries;
    private final People people;
    private final Trail trail;
    private final ShopClock clock;

    WeekDesk(JdbcClient jdbc, Entries entries, People people, Trail trail, ShopClock clock) {
        this.jdbc = jdbc;
        this.entries = entries;
        this.people = people;
        this.trail = trail;
        this.clock = clock;
    }

    public Week of(UUID person, LocalDate date) {
        LocalDate monday = Week.mondayOf(date);
        return jdbc.sql(SELECT + " where w.person_id = ? and w.monday = ?")
                .params(person, monday)
                .query(WeekDesk::read)
                .optional()
                .orElseGet(() -> Week.open(person, monday));
    }

    /** The weeks of that Monday that are not open, by person. */
    public List<Week> touched(LocalDate from, LocalDate to) {
        return jdbc.sql(SELECT + " where w.monday between ? and ? and w.state <> 'open'")
                .params(Week.mondayOf(from), to)
                .query(WeekDesk::read)
                .list();
    }

    /** Whether this person may take a week there, apart from where it stands now. */
    public boolean may(SignedIn me, UUID person, Role role, WeekState to) {
        boolean own = me.personId().equals(person);
        return switch (to) {
            case OPEN, SUBMITTED -> DayLog.mayLog(me, person);
            // A lead's hours, like everybody's, are approved by somebody else; the owner has nobody above.
            case APPROVED -> me.is(Role.OWNER) || me.is(Role.LEAD) && !own && role == Role.HELPER;
            case LOCKED -> me.is(Role.OWNER);
        };
    }

    /** The states that this person may take the week to now. */
    public List<WeekState> next(Week week, SignedIn me, Role role) {
        List<WeekState> next = new ArrayList<>();
        for (WeekState to : List.of(WeekState.SUBMITTED, WeekState.APPROVED, WeekState.LOCKED, WeekState.OPEN)) {
            boolean allowed = FROM.getOrDefault(to, List.of()).contains(week.state())
                    && may(me, week.person(), role, to)
                    && !(to == WeekState.OPEN && week.state() == WeekState.APPROVED && !me.is(Role.OWNER, Role.LEAD))
                    && !(to == WeekState.APPROVED && clock.today().isBefore(week.monday()))
                    && !(to == WeekState.LOCKED && !clock.today().isAfter(week.sunday()));
            if (allowed) {
                next.add(to);
            }
        }
        return next;
    }

    /**
     * Takes the week to a state; the state it already has is a repeat.
     *
     * @param version of the week that the page showed, null for one that nobody had touched
     * @throws Stale where somebody took it elsewhere meanwhile
     */
    @Transactional
    public void move(UUID person, LocalDate date, WeekState to, @Nullable Integer version, String note, SignedIn by) {
        if (!DayLog.mayLog(by, person)) {
            throw new NotHere("week");
        }
        LocalDate monday = Week.mondayOf(date);
        for (int day = 0; day < 7; day++) {
            entries.lock(person, monday.plusDays(day));
        }
        Week week = of(person, monday);
        if (week.state() == to) {
            return;
        }
        if (!Objects.equals(week.version(), version)) {
            throw new Stale("week", List.of(new Stale.Row("State", week.state().label(), to.label())));
        }
        if (!next(week, by, people.named(person).role()).contains(to)) {
            throw new Refused(refusal(week, to));
        }
        trail.by(by.personId());
        write(week, to, note, by.personId());
    }

    private String refusal(Week week, WeekState to) {
        if (week.state() == WeekState.LOCKED) {
            return "This week is locked. Its hours change by a correction, with a reason.";
        }
        if (to == WeekState.LOCKED && !clock.today().isAfter(week.sunday())) {
            return "This week is not over yet. It can be locked from Monday on.";
        }
        if (to == WeekState.APPROVED && clock.today().isBefore(week.monday())) {
            return "This week has not come yet.";
        }
        return week.state() == WeekState.OPEN && to == WeekState.LOCKED
                ? "Approve the week first, then lock it."
                : "That is for somebody else to do: ask the owner of the shop.";
    }

    private void write(Week week, WeekState to, String note, UUID by) {
        Timestamp now = Timestamp.from(clock.now());
        Integer minutes = jdbc.sql(
                        "select coalesce(sum(minutes), 0)::int from time_entry where person_id = ? and on_date between ? and ?")
                .params(week.person(), week.monday(), week.sunday())
                .query(Integer.class)
                .single();
        jdbc.sql("""
                        insert into work_week (person_id, monday, state, version) values (:person, :monday, 'open', 0)
                        on conflict do nothing""")
                .param("person", week.person())
                .param("monday", week.monday())
                .update();
        String set = switch (to) {
            case SUBMITTED -> "submitted_by = :by, submitted_at = :at, note = ''";
            case APPROVED -> "approved_by = :by, approved_at = :at, minutes = :minutes, note = ''";
            case LOCKED -> "locked_by = :by, locked_at = :at";
            case OPEN ->
                "submitted_by = null, submitted_at = null, approved_by = null, approved_at = null, minutes = null, note = :note";
        };
        jdbc.sql("update work_week set state = :to, version = version + 1, " + set
                        + " where person_id = :person and monday = :monday")
                .param("to", to.code())
                .param("by", by)
                .param("at", now)
                .param("minutes", minutes)
                .param("note", note)
                .param("person", week.person())
                .param("monday", week.monday())
                .update();
    }

    private static Week read(ResultSet row, int n) throws SQLException {
        return new Week(
                row.getObject("person_id", UUID.class),
                row.getObject("monday", LocalDate.class),
                WeekState.of(row.getString("state")),
                act(row, "submitted"),
                act(row, "approved"),
                act(row, "locked"),
                Columns.whole(row, "minutes"),
                row.getString("note"),
                row.getInt("version"));
    }

    private static Week.@Nullable Act act(ResultSet row, String what) throws SQLException {
        Timestamp at = row.getTimestamp(what + "_at");
        String who = row.getString(what + "_name");
        return at == null || who == null ? null : new Week.Act(who, at.toInstant());
    }
}
