package org.tallywright.jobs.web;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What happened on a job, named and dated. */
@Component
class EventRows {
    private static final String EVENTS = """
            select e.kind, coalesce(t.name, s.name) as subject, e.from_state, e.to_state, e.on_date,
                p.name as person, e.note
            from job_event e left join task t on t.id = e.task_id left join stage s on s.id = e.stage_id
            left join person p on p.id = e.person_id
            """;

    private final JdbcClient jdbc;

    EventRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Row(
            String kind,
            @Nullable String subject,
            String from,
            String to,
            LocalDate on,
            @Nullable String person,
            String note) {}

    /** The newest first. */
    List<Row> of(UUID jobId, int most) {
        return jdbc.sql(EVENTS + "where e.job_id = ? order by e.at desc, e.id desc limit ?")
                .params(jobId, most)
                .query(EventRows::row)
                .list();
    }

    /** Those of one task, the newest first. The index of the job's events leads there. */
    List<Row> ofTask(UUID jobId, UUID taskId) {
        return jdbc.sql(EVENTS + "where e.job_id = ? and e.task_id = ? order by e.at desc, e.id desc")
                .params(jobId, taskId)
                .query(EventRows::row)
                .list();
    }

    List<Row> walkThroughs(UUID jobId) {
        return jdbc.sql(EVENTS + "where e.job_id = ? and e.kind = 'walk-through' order by e.on_date, e.at")
                .param(jobId)
                .query(EventRows::row)
                .list();
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        return new Row(
                row.getString("kind"),
                row.getString("subject"),
                row.getString("from_state"),
                row.getString("to_state"),
                row.getObject("on_date", LocalDate.class),
                row.getString("person"),
                row.getString("note"));
    }
}
