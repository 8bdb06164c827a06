package org.tallywright.daylog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.ShopAccount;

/** Runs of the clock in the database. */
@Repository
class ClockRuns {
    /** More than that were left lying by nobody; a page shows no more. */
    private static final int MOST = 100;

    private static final String SELECT = """
            select r.*, j.number, j.title, j.state as job_state, j.opened_on, s.one_way_minutes,
                t.name as task_name, t.state as task_state, p.name as piece_name, g.name as stage_name, k.place,
                k.hour_class as usual_class
            from clock_run r
            left join job j on j.id = r.job_id
            left join site s on s.id = j.site_id
            left join task t on t.id = r.task_id
            left join piece p on p.id = t.piece_id
            left join stage g on g.id = t.stage_id
            left join task_kind k on k.id = t.task_kind_id
            """;

    private final JdbcClient jdbc;

    ClockRuns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Makes two devices of one person wait for each other. */
    void lock(UUID person) {
        jdbc.sql("select 1 from pg_advisory_xact_lock(hashtext(?), -1)")
                .param(person.toString())
                .query(Integer.class)
                .single();
    }

    /** What runs, and what ended and was neither put in nor thrown away; the latest, in the order they began. */
    List<ClockRun> open(UUID person) {
        return jdbc.sql("select * from (" + SELECT
                        + " where r.person_id = ? and r.entry_id is null and r.dropped_at is null"
                        + " order by r.started_at desc limit " + MOST + ") o order by o.started_at, o.id")
                .param(person)
                .query(ClockRuns::read)
                .list();
    }

    Optional<ClockRun> find(UUID id) {
        return jdbc.sql(SELECT + " where r.id = ?")
                .param(id)
                .query(ClockRuns::read)
                .optional();
    }

    /** All runs of a person's day, whatever became of them. */
    List<ClockRun> ofDay(UUID person, LocalDate date) {
        return jdbc.sql(SELECT + " where r.person_id = ? and r.on_date = ? order by r.started_at, r.id")
                .params(person, date)
                .query(ClockRuns::read)
                .list();
    }

    /** A run that begins now. */
    record NewRun(
            UUID id,
            UUID person,
            LocalDate date,
            Target target,
            HourClass hourClass,
            @Nullable UUID jobId,
            Instant at) {
        Object[] columns() {
            return new Object[] {
                id,
                person,
                date,
                jobId,
                target.taskId(),
                Columns.of(target.account()),
                hourClass.code(),
                Timestamp.from(at),
                Timestamp.from(at)
            };
        }
    }

    void insert(NewRun run) {
        jdbc.sql("""
                        insert into clock_run (id, person_id, on_date, job_id, task_id, account, hour_class, started_at, confirmed_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?)""").params(run.columns()).update();
    }

    void end(UUID id, Instant at, boolean known) {
        jdbc.sql("update clock_run set ended_at = ?, end_known = ? where id = ?")
                .params(Timestamp.from(at), known, id)
                .update();
    }

    void confirm(UUID id, Instant at) {
        jdbc.sql("update clock_run set confirmed_at = ? where id = ?")
                .params(Timestamp.from(at), id)
                .update();
    }

    /** A run that still goes ends with it. */
    void drop(Collection<UUID> ids, Instant at) {
        jdbc.sql("""
                        update clock_run set dropped_at = ?, ended_at = coalesce(ended_at, ?)
                        where id = any(?::uuid[]) and dropped_at is null""")
                .params(Timestamp.from(at), Timestamp.from(at), Columns.ids(ids))
                .update();
    }

    void keep(Collection<UUID> ids) {
        jdbc.sql("update clock_run set dropped_at = null where id = any(?::uuid[])")
                .param(Columns.ids(ids))
                .update();
    }

    void take(Collection<UUID> ids, UUID entry) {
        jdbc.sql("update clock_run set entry_id = ?, taken_as = ? where id = any(?::uuid[])")
                .params(entry, entry, Columns.ids(ids))
                .update();
    }

    /** An entry that is brought back has a new id; its runs are in it again, unless they were put in elsewhere. */
    void broughtBack(UUID old, UUID entry) {
        jdbc.sql("""
                        update clock_run set entry_id = ?, taken_as = ?
                        where taken_as = ? and entry_id is null and dropped_at is null""").params(entry, entry, old).update();
    }

    private static ClockRun read(ResultSet row, int n) throws SQLException {
        UUID task = row.getObject("task_id", UUID.class);
        UUID job = row.getObject("job_id", UUID.class);
        String account = row.getString("account");
        Target target = account != null
                ? Target.shop(ShopAccount.of(account))
                : task != null ? Target.task(task) : Target.job(Objects.requireNonNull(job));
        return new ClockRun(
                row.getObject("id", UUID.class),
                row.getObject("person_id", UUID.class),
                row.getObject("on_date", LocalDate.class),
                target,
                HourClass.of(row.getString("hour_class")),
                Places.read(row, target),
                row.getTimestamp("started_at").toInstant(),
                row.getTimestamp("confirmed_at").toInstant(),
                instant(row, "ended_at"),
                row.getBoolean("end_known"),
                row.getObject("entry_id", UUID.class),
                instant(row, "dropped_at"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp at = row.getTimestamp(column);
        return at == null ? null : at.toInstant();
    }
}
