package org.tallywright.past;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobState;

/** Lists jobs that have an estimate to copy, the latest first. */
@Component
public class WholeJobs {
    private static final String FIND = """
            with page as materialized (
                select j.id, j.number, j.title, j.state, j.closed_on, j.year, j.sequence, c.name as client, count(*) over () as total
                from job j join client c on c.id = j.client_id
                where exists (select 1 from task t where t.job_id = j.id and t.state not in ('dropped', 'offered'))
                    and (cast(:not as uuid) is null or j.id <> cast(:not as uuid))
                    and (j.number like :like or lower(j.title) like :like or lower(c.name) like :like)
                order by j.year desc, j.sequence desc limit :size offset :skip)
            select p.*, (select count(*) from piece q where q.job_id = p.id) as pieces,
                (select coalesce(sum(t.estimated_minutes), 0) from task t where t.job_id = p.id and t.state not in ('dropped', 'offered')) as estimated,
                (select coalesce(sum(e.minutes), 0) from time_entry e where e.job_id = p.id) as logged
            from page p order by p.year desc, p.sequence desc""";

    private final JdbcClient jdbc;

    WholeJobs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * @param estimated minutes of the tasks that were not dropped
     * @param logged minutes of everything, rework too
     * @param total jobs found on all pages
     */
    public record Row(
            String number,
            String title,
            String client,
            JobState state,
            @Nullable LocalDate closedOn,
            int pieces,
            int estimated,
            int logged,
            int total) {}

    /** @param not a job that is left out, null for none */
    @Transactional(readOnly = true)
    public List<Row> page(String words, @Nullable UUID not, int page, int size) {
        return jdbc.sql(FIND)
                .param("not", not == null ? null : not.toString())
                .param("like", "%" + words.toLowerCase(Locale.ROOT).replaceAll("([\\\\%_])", "\\\\$1") + "%")
                .param("size", size)
                .param("skip", (page - 1) * size)
                .query(WholeJobs::row)
                .list();
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        return new Row(
                row.getString("number"),
                row.getString("title"),
                row.getString("client"),
                JobState.of(row.getString("state")).orElseThrow(),
                row.getObject("closed_on", LocalDate.class),
                row.getInt("pieces"),
                row.getInt("estimated"),
                row.getInt("logged"),
                row.getInt("total"));
    }
}
