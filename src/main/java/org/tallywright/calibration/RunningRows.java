package org.tallywright.calibration;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Ids;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** The kept forecasts of running jobs: one for each day on which something about the job had changed. */
@Component
class RunningRows {
    private final JdbcClient jdbc;
    private final JsonMapper json;

    RunningRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** A task as it is kept. */
    record TaskKept(UUID id, String name, boolean done, double hours) {}

    /** Jobs that ran on that day already and of which nothing is kept for it yet. */
    List<UUID> runningWithout(LocalDate day) {
        return jdbc.sql("""
                        select id from job j where state = 'running' and coalesce(accepted_on, opened_on) <= :day
                        and not exists (select 1 from running_forecast f where f.job_id = j.id and f.on_date >= :day)
                        order by number""").param("day", day).query(UUID.class).list();
    }

    Optional<Forecaster.Kept> last(UUID job, LocalDate until) {
        return jdbc.sql("""
                        select on_date, at_end, hours_so_far, hours_on_no_line, calibration_id, jobs_known, tasks::text as t
                        from running_forecast where job_id = ? and on_date <= ? order by on_date desc limit 1""").params(job, until).query(this::kept).optional();
    }

    private Forecaster.Kept kept(ResultSet row, int n) throws SQLException {
        Map<UUID, Forecaster.TaskNow> tasks = new LinkedHashMap<>();
        json.readValue(row.getString("t"), new TypeReference<List<TaskKept>>() {})
                .forEach(task -> tasks.put(task.id(), new Forecaster.TaskNow(task.name(), task.done(), task.hours())));
        return new Forecaster.Kept(
                row.getObject("on_date", LocalDate.class),
                HoursRange.of(SaidRows.distribution(row, "at_end")),
                row.getDouble("hours_so_far"),
                row.getDouble("hours_on_no_line"),
                row.getObject("calibration_id", UUID.class),
                row.getInt("jobs_known"),
                tasks);
    }

    /** Whether the last one kept says the same: same hours, same plan, same calibration. */
    boolean saysTheSame(UUID job, RunningLook.Look look) {
        return jdbc.sql("""
                        select calibration_id is not distinct from :calibration and jobs_known = :jobs
                               and hours_so_far = :soFar and share_done = :share and unwidened = :unwidened
                        from running_forecast where job_id = :job order by on_date desc limit 1""")
                .param("job", job)
                .param("calibration", look.fitted().id(), java.sql.Types.OTHER)
                .param("jobs", look.fitted().past().jobs().size())
                .param("soFar", look.said().hoursSoFar())
                .param("share", look.said().shareDone())
                .param("unwidened", look.said().unwidenedRemaining().quantiles())
                .query(Boolean.class)
                .optional()
                .orElse(false);
    }

    void keep(UUID job, LocalDate day, RunningLook.Look look, @Nullable Integer stage, Instant at) {
        List<TaskKept> tasks = look.now().entrySet().stream()
                .map(task -> new TaskKept(
                        task.getKey(),
                        task.getValue().name(),
                        task.getValue().done(),
                        task.getValue().hours()))
                .toList();
        jdbc.sql("""
                        insert into running_forecast (id, job_id, on_date, made_at, calibration_id, jobs_known, share_done, hours_so_far,
                            hours_on_no_line, stage, unwidened, at_end, tasks)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?::jsonb) on conflict (job_id, on_date) do nothing""")
                .param(Ids.next())
                .param(job)
                .param(day)
                .param(Timestamp.from(at))
                .param(look.fitted().id())
                .param(look.fitted().past().jobs().size())
                .param(look.said().shareDone())
                .param(look.said().hoursSoFar())
                .param(look.job().hoursOnNoLine())
                .param(stage)
                .param(look.said().unwidenedRemaining().quantiles())
                .param(look.said().atCompletion().quantiles())
                .param(json.writeValueAsString(tasks))
                .update();
    }

    boolean hasStage(UUID job, int percent) {
        return jdbc.sql("select exists (select 1 from running_forecast where job_id = ? and stage = ?)")
                .params(job, percent)
                .query(Boolean.class)
                .single();
    }

    /** Of jobs that no longer run what is judged stays, and the newest: should the job be reopened, that was said last. */
    int forgetTheWayOfEndedJobs() {
        return jdbc.sql("""
                        delete from running_forecast f using job j
                        where j.id = f.job_id and j.state <> 'running' and f.stage is null
                        and exists (select 1 from running_forecast n where n.job_id = f.job_id and n.on_date > f.on_date)""").update();
    }
}
