package org.tallywright.daylog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.shared.Hours;

/** What became of one time entry, act by act, from the trail that the database keeps. */
@Repository
public class EntryTrail {
    /** Label of the day, whose values are ISO dates. */
    public static final String DAY = "Day";

    private static final String ACTS = """
            select a.at, p.name as who, a.act, a.before, x.*
            from audit_entry a
            left join person p on p.id = a.person_id
            cross join lateral (select
                v.before ->> 'on_date' as b_date, v.after ->> 'on_date' as a_date,
                v.before ->> 'minutes' as b_minutes, v.after ->> 'minutes' as a_minutes,
                left(v.before ->> 'starts_at', 5) || '-' || left(v.before ->> 'ends_at', 5) as b_clock,
                left(v.after ->> 'starts_at', 5) || '-' || left(v.after ->> 'ends_at', 5) as a_clock,
                v.before ->> 'hour_class' as b_class, v.after ->> 'hour_class' as a_class,
                v.before ->> 'note' as b_note, v.after ->> 'note' as a_note,
                v.before ->> 'reason' as b_reason, v.after ->> 'reason' as a_reason,
                (select coalesce(t.name || ', ', '') || j.number from job j left join task t on t.id = (v.before ->> 'task_id')::uuid
                    where j.id = (v.before ->> 'job_id')::uuid) as b_job,
                (select coalesce(t.name || ', ', '') || j.number from job j left join task t on t.id = (v.after ->> 'task_id')::uuid
                    where j.id = (v.after ->> 'job_id')::uuid) as a_job,
                'shop, ' || (v.before ->> 'account') as b_account, 'shop, ' || (v.after ->> 'account') as a_account
                from (select a.before, a.after) v) x
            where a.subject = 'time_entry' and a.subject_id = ?
            order by a.id""";

    private final JdbcClient jdbc;

    EntryTrail(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * One act.
     *
     * @param who null for the server itself
     * @param what insert, update or delete
     */
    public record Act(Instant at, @Nullable String who, String what, List<Difference> differences) {}

    /** One field before and after; empty where there was nothing. */
    public record Difference(String label, String before, String after) {}

    public List<Act> of(UUID entry) {
        return jdbc.sql(ACTS)
                .param(entry.toString())
                .query((row, n) -> new Act(
                        row.getTimestamp("at").toInstant(),
                        row.getString("who"),
                        row.getString("act"),
                        differences(row)))
                .list();
    }

    /** Whose entry it was and on which day, for one that was taken off; empty for an id that never was one. */
    public java.util.Optional<Gone> gone(UUID entry) {
        return jdbc.sql("select person_id, on_date from deleted_time_entry where id = ?")
                .param(entry)
                .query((row, n) ->
                        new Gone(row.getObject("person_id", UUID.class), row.getObject("on_date", LocalDate.class)))
                .optional();
    }

    /** An entry that is no more. */
    public record Gone(UUID person, LocalDate date) {}

    private static List<Difference> differences(ResultSet row) throws SQLException {
        List<Difference> all = new ArrayList<>();
        add(all, DAY, row.getString("b_date"), row.getString("a_date"));
        add(all, "Went into", went(row, "b"), went(row, "a"));
        add(all, "Hours", hours(row, "b"), hours(row, "a"));
        add(all, "Hour class", row.getString("b_class"), row.getString("a_class"));
        add(all, "Note", row.getString("b_note"), row.getString("a_note"));
        add(all, "Why again", row.getString("b_reason"), row.getString("a_reason"));
        return all;
    }

    private static @Nullable String went(ResultSet row, String side) throws SQLException {
        String job = row.getString(side + "_job");
        return job == null ? row.getString(side + "_account") : job;
    }

    private static @Nullable String hours(ResultSet row, String side) throws SQLException {
        String minutes = row.getString(side + "_minutes");
        if (minutes == null) {
            return null;
        }
        String clock = row.getString(side + "_clock");
        return Hours.ofMinutes(Integer.parseInt(minutes)) + (clock == null ? "" : " (" + clock + ")");
    }

    private static void add(List<Difference> all, String label, @Nullable String before, @Nullable String after) {
        String was = Objects.requireNonNullElse(before, "");
        String is = Objects.requireNonNullElse(after, "");
        if (!was.equals(is)) {
            all.add(new Difference(label, was, is));
        }
    }
}
