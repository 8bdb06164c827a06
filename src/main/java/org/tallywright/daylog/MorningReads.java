package org.tallywright.daylog;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What somebody needs to know before the day begins. No hours in it, estimated or logged. */
@Repository
public class MorningReads {
    private static final String TASKS = """
            select t.id, t.name, t.quantity, t.unit, g.name as stage, j.id as job_id, j.number, j.title, s.address, s.access_note,
                s.occupied, s.stairs, k.place, k.caution, k.caution_source, p.id as piece_id, p.name as piece, p.width, p.height, p.depth,
                p.count
            from task t
            join job j on j.id = t.job_id
            join site s on s.id = j.site_id
            join stage g on g.id = t.stage_id
            join task_kind k on k.id = t.task_kind_id
            left join piece p on p.id = t.piece_id
            where t.id = any(:tasks::uuid[]) and t.state in ('planned', 'started')
            order by j.number, g.position, t.position, t.id
            limit 12""";
    private static final String CURING = """
            select w.job_id, w.what, w.ends_at, t.name || coalesce(', ' || p.name, '') as name
            from wait w join task t on t.id = w.task_id left join piece p on p.id = t.piece_id
            join job j on j.id = w.job_id
            where w.ended_at is null and w.ends_at > :now and w.started_at <= :now
                and (w.job_id = any(:jobs::uuid[]) or j.state not in ('closed', 'lost'))
            order by w.job_id = any(:jobs::uuid[]) desc, w.ends_at, w.id limit 12""";

    private final JdbcClient jdbc;

    MorningReads(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param width as are height and depth, whole units of 3.125 micrometres, or null where not measured */
    public record Task(
            UUID id,
            String name,
            BigDecimal quantity,
            String unit,
            String stage,
            UUID jobId,
            String number,
            String title,
            String address,
            String accessNote,
            boolean occupied,
            boolean stairs,
            String place,
            String caution,
            String cautionSource,
            @Nullable UUID pieceId,
            @Nullable String piece,
            @Nullable Long width,
            @Nullable Long height,
            @Nullable Long depth,
            @Nullable Integer count) {}

    /** Something that is not to be touched yet. */
    public record Curing(UUID jobId, String name, String what, Instant until) {}

    /** Those of the tasks that are open, by job and stage. */
    public List<Task> tasks(Collection<UUID> ids) {
        return jdbc.sql(TASKS)
                .param("tasks", Columns.ids(ids))
                .query(Task.class)
                .list();
    }

    /** What cures in those jobs first, then elsewhere in the shop. */
    public List<Curing> curing(Collection<UUID> jobs, Instant now) {
        return jdbc.sql(CURING)
                .param("jobs", Columns.ids(jobs))
                .param("now", Timestamp.from(now))
                .query((row, n) -> new Curing(
                        row.getObject("job_id", UUID.class),
                        row.getString("name"),
                        row.getString("what"),
                        row.getTimestamp("ends_at").toInstant()))
                .list();
    }
}
