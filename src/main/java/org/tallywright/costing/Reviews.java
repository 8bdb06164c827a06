package org.tallywright.costing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobClosed;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;
import tools.jackson.databind.json.JsonMapper;

/** The reviews of closed jobs: frozen when a job closes, one for each closing. For the owner only. */
@Service
public class Reviews {
    private final JobCosts costs;
    private final Trail trail;
    private final ShopClock clock;
    private final JdbcClient jdbc;
    private final JsonMapper json;

    Reviews(JobCosts costs, Trail trail, ShopClock clock, JdbcClient jdbc, JsonMapper json) {
        this.costs = costs;
        this.trail = trail;
        this.clock = clock;
        this.jdbc = jdbc;
        this.json = json;
    }

    /** In the closing's own transaction: a job is closed with its review, or not at all. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void freeze(JobClosed event) {
        JobFigures figures = costs.figures(event.jobId(), event.closedOn());
        jdbc.sql("""
                        insert into review (id, job_id, closing, closed_on, closed_at, closed_by, figures, version)
                        select ?, ?, coalesce(max(closing), 0) + 1, ?, ?, ?, ?::jsonb, 0 from review where job_id = ?""")
                .params(
                        Ids.next(),
                        event.jobId(),
                        event.closedOn(),
                        Timestamp.from(clock.now()),
                        event.by(),
                        json.writeValueAsString(figures),
                        event.jobId())
                .update();
    }

    /** All of a job, the latest closing first, without their figures. */
    @Transactional(readOnly = true)
    public List<Closed> of(UUID job) {
        return jdbc.sql("""
                        select r.id, r.closing, r.closed_on, r.closed_at, p.name as closed_by, r.lesson, r.version
                        from review r join person p on p.id = r.closed_by where r.job_id = ? order by r.closing desc""").param(job).query(Reviews::closed).list();
    }

    private static Closed closed(ResultSet row, int n) throws SQLException {
        return new Closed(
                row.getObject("id", UUID.class),
                row.getInt("closing"),
                row.getObject("closed_on", LocalDate.class),
                row.getTimestamp("closed_at").toInstant(),
                row.getString("closed_by"),
                row.getString("lesson"),
                row.getInt("version"));
    }

    /** The figures as they were frozen. */
    @Transactional(readOnly = true)
    public JobFigures figures(UUID review) {
        return jdbc.sql("select figures::text from review where id = ?")
                .param(review)
                .query(String.class)
                .optional()
                .map(kept -> json.readValue(kept, JobFigures.class))
                .orElseThrow(() -> new NotHere("review"));
    }

    /** A job's number and state with, where it runs, its sums up to now; where it is closed, those that were frozen last. */
    record Standing(String number, String state, Optional<CostSums> sums) {}

    /** @throws NotHere for an unknown job */
    @Transactional(readOnly = true)
    Standing standing(UUID job) {
        return jdbc.sql("""
                        select j.number, j.state, (r.figures -> 'actual')::text as frozen, c.* from job j
                        left join lateral (
                            select figures from review
                            where job_id = j.id and j.state = 'closed' order by closing desc limit 1) r on true
                        left join costing_job c on c.job_id = j.id and j.state = 'running'
                        where j.id = ?""")
                .param(job)
                .query((row, n) -> new Standing(row.getString("number"), row.getString("state"), sums(row)))
                .optional()
                .orElseThrow(() -> new NotHere("job"));
    }

    private Optional<CostSums> sums(ResultSet row) throws SQLException {
        String frozen = row.getString("frozen");
        if (frozen != null) {
            return Optional.of(json.readValue(frozen, CostSums.class));
        }
        return row.getObject("job_id") == null ? Optional.empty() : Optional.of(CostRows.sums(row));
    }

    /** What was logged on a job after that closing: call-backs, at today's knowledge of wages. */
    @Transactional(readOnly = true)
    public List<After> after(UUID job, Closed review) {
        return jdbc.sql("""
                        select e.on_date as on, p.name as person, e.hour_class, e.minutes, coalesce(e.amount, 0) as labour, e.note,
                               e.reason
                        from costing_entry e join person p on p.id = e.person_id
                        where e.job_id = ? and (e.on_date > ? or e.logged_at > ?) order by e.on_date, e.id""")
                .params(job, review.closedOn(), Timestamp.from(review.closedAt()))
                .query(After.class)
                .list();
    }

    /**
     * Writes down what was learnt. The same words again are a repeat.
     *
     * @throws Stale when somebody changed it since
     */
    @Transactional
    public void learn(UUID job, UUID review, int version, String lesson, UUID by) {
        trail.by(by);
        Closed kept = of(job).stream()
                .filter(r -> r.id().equals(review))
                .findFirst()
                .orElseThrow(() -> new NotHere("review"));
        if (kept.lesson().equals(lesson)) {
            return;
        }
        int changed = jdbc.sql("update review set lesson = ?, version = version + 1 where id = ? and version = ?")
                .params(lesson, review, version)
                .update();
        if (changed == 0) {
            throw new Stale("lesson", List.of(new Stale.Row("Lesson", kept.lesson(), lesson)));
        }
    }

    /**
     * One closing of a job.
     *
     * @param closing 1 for the first
     */
    public record Closed(
            UUID id, int closing, LocalDate closedOn, Instant closedAt, String closedBy, String lesson, int version) {}

    /** An entry after the closing; labour in the shop's currency. */
    public record After(
            LocalDate on,
            String person,
            String hourClass,
            int minutes,
            BigDecimal labour,
            String note,
            String reason) {}
}
