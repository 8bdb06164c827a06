package org.tallywright.daylog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.ShopAccount;

/**
 * Time entries in the database. Plain SQL, in whole days: the day sheet is the busiest page, and its save has to delete,
 * change and insert in an order of its own.
 */
@Repository
class Entries {
    private static final String SELECT = """
            select e.*, w.name as person_name, b.name as logged_by_name,
                j.number, j.title, j.state as job_state, j.opened_on, s.one_way_minutes,
                t.name as task_name, t.state as task_state, p.name as piece_name, g.name as stage_name, k.place, k.hour_class as usual_class,
                coalesce((select sum(o.minutes) from time_entry o
                    where o.task_id = e.task_id and o.person_id = e.person_id), 0) as so_far
            from time_entry e
            join person w on w.id = e.person_id
            join person b on b.id = e.logged_by
            left join job j on j.id = e.job_id
            left join site s on s.id = j.site_id
            left join task t on t.id = e.task_id
            left join piece p on p.id = t.piece_id
            left join stage g on g.id = t.stage_id
            left join task_kind k on k.id = t.task_kind_id
            """;
    /** The few entries first: beside so many joins the planner would join every entry before it looks for them. */
    private static final String DAY_OR = SELECT.replace("from time_entry e\n", """
            from (select * from time_entry where person_id = ? and on_date = ? and not correction
                union select * from time_entry where id = any(?::uuid[])) e
            """);

    private static final String INSERT = """
            insert into time_entry (id, person_id, on_date, job_id, task_id, account, hour_class, minutes, starts_at, ends_at,
                note, reason, logged_by, logged_at, version)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?::time, ?::time, ?, ?, ?, ?, 0)""";
    private static final String CORRECT = """
            insert into time_entry (id, person_id, on_date, job_id, task_id, account, hour_class, minutes, starts_at, ends_at,
                note, reason, logged_by, logged_at, version, correction)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?::time, ?::time, ?, ?, ?, ?, 0, true)""";
    private static final String UPDATE = """
            update time_entry set on_date = ?, job_id = ?, task_id = ?, account = ?, hour_class = ?, minutes = ?,
                starts_at = ?::time, ends_at = ?::time, note = ?, reason = ?, version = version + 1
            where id = ? and version = ?""";

    private final JdbcClient jdbc;
    private final JdbcTemplate batch;

    Entries(JdbcClient jdbc, JdbcTemplate batch) {
        this.jdbc = jdbc;
        this.batch = batch;
    }

    /**
     * Makes two devices that save the same day wait for each other; the key is the one of the database's own checks.
     *
     * @return how far the week of the day has come, which stays until the transaction ends
     */
    WeekState lock(UUID person, LocalDate date) {
        return WeekState.of(jdbc.sql("select hold_day_of_week(?, ?)")
                .params(person, date)
                .query(String.class)
                .single());
    }

    List<Entry> ofDay(UUID person, LocalDate date) {
        return jdbc.sql(
                        SELECT
                                + " where e.person_id = ? and e.on_date = ? and not e.correction order by e.starts_at, e.logged_at, e.id")
                .params(person, date)
                .query(Entries::read)
                .list();
    }

    /** The day's entries and those of other days or persons that carry one of the ids. */
    List<Entry> ofDayOr(UUID person, LocalDate date, Collection<UUID> ids) {
        return jdbc.sql(DAY_OR + " order by e.starts_at, e.logged_at, e.id")
                .params(person, date, Columns.ids(ids))
                .query(Entries::read)
                .list();
    }

    Optional<Entry> find(UUID id) {
        return jdbc.sql(SELECT + " where e.id = ?")
                .param(id)
                .query(Entries::read)
                .optional();
    }

    Set<UUID> deletedAmong(Collection<UUID> ids) {
        return new HashSet<>(jdbc.sql("select id from deleted_time_entry where id = any(?::uuid[])")
                .param(Columns.ids(ids))
                .query(UUID.class)
                .list());
    }

    void insert(List<NewEntry> entries) {
        if (!entries.isEmpty()) {
            batch.batchUpdate(INSERT, entries.stream().map(NewEntry::columns).toList());
        }
    }

    /** Minutes more or less beside the entries of a locked week. */
    void insertCorrection(NewEntry entry) {
        jdbc.sql(CORRECT).params(entry.columns()).update();
    }

    void update(List<ChangedEntry> entries) {
        if (entries.isEmpty()) {
            return;
        }
        int[] changed = batch.batchUpdate(
                UPDATE, entries.stream().map(ChangedEntry::columns).toList());
        for (int n = 0; n < changed.length; n++) {
            if (changed[n] == 0) {
                ChangedEntry wanted = entries.get(n);
                throw Said.stale(
                        find(wanted.id()).orElse(null), Said.of(wanted.date().toString(), "", wanted.content()));
            }
        }
    }

    /** Takes entries off their days and keeps their ids, so that a late repeat does not bring them back. */
    void delete(List<Entry> entries, UUID by, Instant at) {
        if (entries.isEmpty()) {
            return;
        }
        batch.batchUpdate(
                "insert into deleted_time_entry (id, person_id, on_date, deleted_by, deleted_at) values (?, ?, ?, ?, ?)",
                entries.stream()
                        .map(e -> new Object[] {e.id(), e.personId(), e.date(), by, Timestamp.from(at)})
                        .toList());
        int[] gone = batch.batchUpdate(
                "delete from time_entry where id = ? and version = ?",
                entries.stream().map(e -> new Object[] {e.id(), e.version()}).toList());
        for (int n = 0; n < gone.length; n++) {
            if (gone[n] == 0) {
                throw Said.stale(find(entries.get(n).id()).orElse(null), null);
            }
        }
    }

    /** A row to insert. */
    record NewEntry(
            UUID id,
            UUID person,
            LocalDate date,
            Content content,
            @Nullable UUID jobId,
            UUID by,
            Instant at) {
        Object[] columns() {
            return new Object[] {
                id,
                person,
                date,
                jobId,
                content.target().taskId(),
                Columns.of(content.target().account()),
                content.hourClass().code(),
                content.minutes(),
                Columns.start(content.span()),
                Columns.end(content.span()),
                content.note(),
                content.reason(),
                by,
                Timestamp.from(at)
            };
        }
    }

    /** A row to change, if it still has that version. */
    record ChangedEntry(
            UUID id,
            int version,
            LocalDate date,
            Content content,
            @Nullable UUID jobId) {
        Object[] columns() {
            return new Object[] {
                date,
                jobId,
                content.target().taskId(),
                Columns.of(content.target().account()),
                content.hourClass().code(),
                content.minutes(),
                Columns.start(content.span()),
                Columns.end(content.span()),
                content.note(),
                content.reason(),
                id,
                version
            };
        }
    }

    static Entry read(ResultSet row, int n) throws SQLException {
        UUID task = row.getObject("task_id", UUID.class);
        UUID job = row.getObject("job_id", UUID.class);
        String account = row.getString("account");
        Target target = account != null
                ? Target.shop(ShopAccount.of(account))
                : task != null ? Target.task(task) : Target.job(Objects.requireNonNull(job));
        Content content = new Content(
                target,
                HourClass.of(row.getString("hour_class")),
                row.getInt("minutes"),
                Columns.span(row),
                row.getString("note"),
                row.getString("reason"));
        return new Entry(
                row.getObject("id", UUID.class),
                row.getObject("person_id", UUID.class),
                row.getString("person_name"),
                row.getObject("on_date", LocalDate.class),
                content,
                Places.read(row, target),
                row.getObject("logged_by", UUID.class),
                row.getString("logged_by_name"),
                row.getTimestamp("logged_at").toInstant(),
                row.getInt("so_far"),
                row.getBoolean("correction"),
                row.getInt("version"));
    }
}
