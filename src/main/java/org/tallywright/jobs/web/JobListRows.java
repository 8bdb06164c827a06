package org.tallywright.jobs.web;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobState;

/** Reads one page of the list of jobs: one query for the rows, one for the counts. */
@Component
class JobListRows {
    static final int PAGE_SIZE = 50;

    // The sums are made for the rows of the page only, and a condition is there only when it is asked for: the usual
    // list, running jobs without a search, is then read from the index of states.
    private static final String ROWS = """
            with page as materialized (
                select j.id, j.number, j.title, j.state, j.promised_on, c.name as client, %s as total
                from job j join client c on c.id = j.client_id join site s on s.id = j.site_id
                where %s
                order by %s
                limit :size offset :skip)
            select p.*,
                (select s.name from job_stage js join stage s on s.id = js.stage_id
                 where js.job_id = p.id and js.entered_on is not null order by s.position desc limit 1) as stage,
                (select coalesce(sum(t.estimated_minutes), 0) from task t
                 where t.job_id = p.id and t.state not in ('dropped', 'offered')) as estimated
            from page p""";
    private static final String FOUND =
            "(j.number like :like or lower(j.title) like :like or lower(c.name) like :like or lower(s.address) like :like)";

    private final JdbcClient jdbc;

    JobListRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param found how many the search found; 0 where nothing was searched for */
    record Row(
            UUID id,
            String number,
            String title,
            JobState state,
            @Nullable LocalDate promisedOn,
            String client,
            @Nullable String stage,
            int estimatedMinutes,
            int found) {}

    List<Row> page(JobFilter filter) {
        String total = filter.q().isEmpty() ? "null::int" : "count(*) over ()";
        return jdbc.sql(ROWS.formatted(total, conditions(filter), filter.orderBy()))
                .param("state", filter.state())
                .param("client", filter.client())
                .param("like", filter.like())
                .param("size", PAGE_SIZE)
                .param("skip", (filter.page() - 1) * PAGE_SIZE)
                .query(JobListRows::row)
                .list();
    }

    /** Put together from fixed text; what was typed stays a parameter. */
    private static String conditions(JobFilter filter) {
        List<String> all = new ArrayList<>();
        all.add(filter.state().equals(JobFilter.ALL) ? "true" : "j.state = :state");
        if (filter.client() != null) {
            all.add("j.client_id = :client");
        }
        if (!filter.q().isEmpty()) {
            all.add(FOUND);
        }
        return String.join(" and ", all);
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        return new Row(
                row.getObject("id", UUID.class),
                row.getString("number"),
                row.getString("title"),
                JobState.of(row.getString("state")).orElseThrow(),
                row.getObject("promised_on", LocalDate.class),
                row.getString("client"),
                row.getString("stage"),
                row.getInt("estimated"),
                row.getInt("total"));
    }

    /** Jobs in each state, of one client or of all; a state without jobs is missing. */
    Map<String, Integer> counts(@Nullable UUID client) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        jdbc.sql("""
                        select state, count(*) from job
                        where cast(:client as uuid) is null or client_id = cast(:client as uuid) group by state""").param("client", client == null ? null : client.toString()).query(row -> {
            counts.put(row.getString(1), row.getInt(2));
        });
        return counts;
    }

    Optional<String> clientName(UUID client) {
        return jdbc.sql("select name from client where id = ?")
                .param(client)
                .query(String.class)
                .optional();
    }
}
