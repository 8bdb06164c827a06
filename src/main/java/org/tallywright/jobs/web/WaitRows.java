package org.tallywright.jobs.web;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.NotHere;

/** A job's waits, as its pages show them. */
@Component
class WaitRows {
    private final JdbcClient jdbc;

    WaitRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Row(
            UUID id,
            String task,
            String what,
            Instant startedAt,
            Instant endsAt,
            @Nullable Instant endedAt,
            int version) {}

    /** Waits that run, and those that ran out or were ended in the last days. */
    List<Row> since(UUID jobId, Instant since) {
        return jdbc.sql("""
                        select w.id, t.name, w.what, w.started_at, w.ends_at, w.ended_at, w.version
                        from wait w join task t on t.id = w.task_id
                        where w.job_id = ? and coalesce(w.ended_at, w.ends_at) > ?
                        order by w.ended_at nulls first, w.ends_at, w.position""")
                .params(jobId, Timestamp.from(since))
                .query(WaitRows::row)
                .list();
    }

    Row one(UUID jobId, UUID waitId) {
        return jdbc.sql("""
                        select w.id, t.name, w.what, w.started_at, w.ends_at, w.ended_at, w.version
                        from wait w join task t on t.id = w.task_id where w.id = ? and w.job_id = ?""")
                .params(waitId, jobId)
                .query(WaitRows::row)
                .optional()
                .orElseThrow(() -> new NotHere("wait"));
    }

    List<Row> ofTask(UUID jobId, UUID taskId) {
        return jdbc.sql("""
                        select w.id, t.name, w.what, w.started_at, w.ends_at, w.ended_at, w.version
                        from wait w join task t on t.id = w.task_id where w.job_id = ? and w.task_id = ? order by w.position""").params(jobId, taskId).query(WaitRows::row).list();
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        OffsetDateTime ended = row.getObject("ended_at", OffsetDateTime.class);
        return new Row(
                row.getObject("id", UUID.class),
                row.getString("name"),
                row.getString("what"),
                row.getObject("started_at", OffsetDateTime.class).toInstant(),
                row.getObject("ends_at", OffsetDateTime.class).toInstant(),
                ended == null ? null : ended.toInstant(),
                row.getInt("version"));
    }
}
