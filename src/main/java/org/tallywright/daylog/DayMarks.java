package org.tallywright.daylog;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** Marks days without work on purpose, so that a gap is a gap. */
@Service
public class DayMarks {
    /** Why nothing was worked. */
    public enum Kind {
        LEAVE("Leave"),
        SICK("Sick"),
        OFF("Off");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }

        public String label() {
            return label;
        }

        /** @throws Refused for any other word */
        public static Kind of(String typed) {
            return Arrays.stream(values())
                    .filter(kind -> kind.code().equals(typed.strip().toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .orElseThrow(() -> new Refused("kind", "Choose leave, sick or off."));
        }
    }

    private final JdbcClient jdbc;
    private final Entries entries;
    private final Trail trail;

    DayMarks(JdbcClient jdbc, Entries entries, Trail trail) {
        this.jdbc = jdbc;
        this.entries = entries;
        this.trail = trail;
    }

    /**
     * Sets the mark of a day; the same mark again is a repeat.
     *
     * @param version of the mark that the page showed; null where there was none
     * @throws Stale where another mark was set meanwhile
     */
    @Transactional
    public void mark(UUID person, LocalDate date, Kind kind, String note, @Nullable Integer version, SignedIn by) {
        check(person, date, by);
        Said typed = new Said(kind.label(), note);
        if (version != null && kept(person, date).isEmpty()) {
            throw stale(person, date, typed);
        }
        int done = jdbc.sql("""
                        insert into day_mark (person_id, on_date, kind, note, marked_by, version) values (?, ?, ?, ?, ?, 0)
                        on conflict (person_id, on_date) do update
                            set kind = excluded.kind, note = excluded.note, marked_by = excluded.marked_by,
                                version = day_mark.version + 1
                            where day_mark.version = ?
                                or (day_mark.kind = excluded.kind and day_mark.note = excluded.note)""")
                .params(person, date, kind.code(), note, by.personId(), version == null ? -1 : version)
                .update();
        if (done == 0) {
            throw stale(person, date, typed);
        }
    }

    /**
     * Takes the mark off; none there is a repeat.
     *
     * @param version of the mark that the page showed; null takes off any
     * @throws Stale where another mark was set meanwhile
     */
    @Transactional
    public void clear(UUID person, LocalDate date, @Nullable Integer version, SignedIn by) {
        check(person, date, by);
        int done = jdbc.sql("delete from day_mark where person_id = ? and on_date = ? and ? in (version, -1)")
                .params(person, date, version == null ? -1 : version)
                .update();
        if (done == 0 && kept(person, date).isPresent()) {
            throw stale(person, date, NONE);
        }
    }

    /** A mark in words. */
    private record Said(String mark, String note) {}

    private static final Said NONE = new Said("no mark", "");

    private Optional<Said> kept(UUID person, LocalDate date) {
        return jdbc.sql("select kind, note from day_mark where person_id = ? and on_date = ?")
                .params(person, date)
                .query((row, n) -> new Said(Kind.of(row.getString("kind")).label(), row.getString("note")))
                .optional();
    }

    private Stale stale(UUID person, LocalDate date, Said typed) {
        Said kept = kept(person, date).orElse(NONE);
        return new Stale(
                "mark of the day",
                List.of(
                        new Stale.Row("Mark", kept.mark(), typed.mark()),
                        new Stale.Row("Note", kept.note(), typed.note())));
    }

    private void check(UUID person, LocalDate date, SignedIn by) {
        if (!DayLog.mayLog(by, person)) {
            throw new NotHere("day");
        }
        WeekState week = entries.lock(person, date);
        if (week.fixed()) {
            throw new Refused("note", week.refusal());
        }
        trail.by(by.personId());
    }
}
