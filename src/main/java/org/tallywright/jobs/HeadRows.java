package org.tallywright.jobs;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.NotHere;

/** What the top of a job's pages reads, in three queries whatever the size of the job. */
@Component
class HeadRows {
    private final JdbcClient jdbc;

    HeadRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Head(
            JobRef job,
            String client,
            String address,
            @Nullable LocalDate promisedOn) {}

    /** @param estimatedMinutes of the tasks in the plan: neither dropped nor only offered */
    record Stage(UUID id, String name, String state, int estimatedMinutes, List<UUID> taskIds) {}

    record OpenWait(UUID stageId, String task, String what, Instant startedAt, Instant endsAt) {}

    Head head(String number) {
        return jdbc.sql("""
                        select j.id, j.number, j.title, j.state, j.client_id, j.site_id, c.name, s.address, j.promised_on
                        from job j join client c on c.id = j.client_id join site s on s.id = j.site_id
                        where j.number = ?""").param(number).query(HeadRows::head).optional().orElseThrow(() -> new NotHere("job"));
    }

    private static Head head(ResultSet row, int n) throws SQLException {
        JobRef job = new JobRef(
                row.getObject(1, UUID.class),
                row.getString(2),
                row.getString(3),
                JobState.of(row.getString(4)).orElseThrow(),
                row.getObject(5, UUID.class),
                row.getObject(6, UUID.class));
        return new Head(job, row.getString(7), row.getString(8), row.getObject(9, LocalDate.class));
    }

    /** The shop's stages in order; a stage taken out of use stays where the job has something in it. */
    List<Stage> stages(UUID jobId) {
        return jdbc.sql("""
                        select s.id, s.name,
                          case when js.skipped then 'skipped' when js.done_on is not null then 'done'
                               when js.entered_on is not null then 'entered' else 'ahead' end,
                          coalesce(t.minutes, 0), coalesce(t.ids, '{}')
                        from stage s
                        left join job_stage js on js.stage_id = s.id and js.job_id = :job
                        left join (select stage_id, array_agg(id) as ids,
                              sum(estimated_minutes) filter (where state not in ('dropped', 'offered')) as minutes
                            from task where job_id = :job group by stage_id) t on t.stage_id = s.id
                        where s.active or js.job_id is not null or t.stage_id is not null
                        order by s.position""")
                .param("job", jobId)
                .query((row, n) -> new Stage(
                        row.getObject(1, UUID.class), row.getString(2), row.getString(3), row.getInt(4), ids(row, 5)))
                .list();
    }

    private static List<UUID> ids(ResultSet row, int column) throws SQLException {
        Array array = row.getArray(column);
        return Arrays.asList((UUID[]) array.getArray());
    }

    /** Waits that nobody ended and that have not run out by then, the first to end first. */
    List<OpenWait> openWaits(UUID jobId, Instant at) {
        return jdbc.sql("""
                        select t.stage_id, t.name, w.what, w.started_at, w.ends_at
                        from wait w join task t on t.id = w.task_id
                        where w.job_id = ? and w.ended_at is null and w.ends_at > ?
                        order by w.ends_at, w.position""")
                .params(jobId, java.sql.Timestamp.from(at))
                .query((row, n) -> new OpenWait(
                        row.getObject(1, UUID.class),
                        row.getString(2),
                        row.getString(3),
                        row.getObject(4, OffsetDateTime.class).toInstant(),
                        row.getObject(5, OffsetDateTime.class).toInstant()))
                .list();
    }
}
