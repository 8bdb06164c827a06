package org.tallywright.calibration;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.HourClass;

/**
 * Reads work from jobs, tasks and time entries. Starting rates are the catalogue's of today, unless the unit was changed; a merged
 * task kind is the one that it is counted as.
 */
@Component
class WorkRows {
    static final Set<String> RATE_CLASSES = Arrays.stream(HourClass.values())
            .filter(HourClass::countsInRate)
            .map(HourClass::code)
            .collect(Collectors.toSet());

    private static final String TASK = """
            select t.id, t.job_id, k.id as kind, t.name, t.quantity, coalesce(t.quantity_done, t.quantity) as done,
                   case when t.unit = k.unit then k.unit_hours else t.starting_unit_hours end as rate,
                   t.estimated_minutes, t.state, t.done_on, t.assigned_to, s.occupied, s.out_of_square, s.stairs
            from task t
            join task_kind o on o.id = t.task_kind_id
            join task_kind k on k.id = coalesce(o.merged_into, o.id)
            join job j on j.id = t.job_id
            join site s on s.id = j.site_id
            """;

    private final JdbcClient jdbc;

    WorkRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record JobRow(
            UUID id,
            String number,
            String title,
            LocalDate knownBy,
            LocalDate closedOn,
            @Nullable BigDecimal bidHours,
            @Nullable BigDecimal labourRate) {}

    /** @param rate starting person-hours per unit */
    record TaskRow(
            UUID id,
            UUID jobId,
            UUID kind,
            String name,
            BigDecimal quantity,
            BigDecimal done,
            BigDecimal rate,
            int estimatedMinutes,
            String state,
            @Nullable LocalDate doneOn,
            @Nullable UUID assignedTo,
            boolean occupied,
            boolean outOfSquare,
            boolean stairs,
            boolean unfamiliar) {

        double planned() {
            return quantity.multiply(rate).doubleValue();
        }

        Set<String> conditions() {
            Set<String> held = new TreeSet<>();
            if (occupied) {
                held.add(SiteCondition.OCCUPIED.key());
            }
            if (outOfSquare) {
                held.add(SiteCondition.OUT_OF_SQUARE.key());
            }
            if (stairs) {
                held.add(SiteCondition.STAIRS.key());
            }
            if (unfamiliar) {
                held.add(SiteCondition.UNFAMILIAR.key());
            }
            return held;
        }

        /** The same on a job that has a material for the first time. */
        TaskRow onUnfamiliar() {
            return new TaskRow(
                    id,
                    jobId,
                    kind,
                    name,
                    quantity,
                    done,
                    rate,
                    estimatedMinutes,
                    state,
                    doneOn,
                    assignedTo,
                    occupied,
                    outOfSquare,
                    stairs,
                    true);
        }
    }

    /** Minutes of one person in one hour class on a task, or on the job without a task. */
    record HoursRow(UUID jobId, @Nullable UUID taskId, UUID personId, String hourClass, int minutes) {
        boolean inRate() {
            return RATE_CLASSES.contains(hourClass);
        }
    }

    record PastRow(
            UUID id,
            UUID batch,
            String job,
            UUID kind,
            BigDecimal quantity,
            BigDecimal rate,
            @Nullable Integer estimatedMinutes,
            int actualMinutes,
            @Nullable LocalDate startedOn,
            LocalDate doneOn,
            @Nullable UUID personId) {}

    List<JobRow> closedJobs() {
        return jdbc.sql("""
                        select j.id, j.number, j.title, coalesce(j.accepted_on, j.opened_on) as known_by, j.closed_on,
                               b.bid_hours, b.labour_rate
                        from job j
                        cross join lateral (select sum(estimated_minutes) / 60.0 as bid_hours,
                            max(labour_rate) filter (where kind = 'bid') as labour_rate
                            from bid where job_id = j.id and state = 'accepted') b
                        where j.state = 'closed' order by j.closed_on, j.number""").query(JobRow.class).list();
    }

    List<TaskRow> tasksOfClosedJobs() {
        return jdbc.sql(TASK + " where j.state = 'closed' and t.state = 'done' order by t.done_on, t.id")
                .query(WorkRows::task)
                .list();
    }

    List<HoursRow> hoursOfClosedJobs() {
        return jdbc.sql("""
                        select e.job_id, e.task_id, e.person_id, e.hour_class, sum(e.minutes)::int as minutes
                        from time_entry e join job j on j.id = e.job_id where j.state = 'closed'
                        group by e.job_id, e.task_id, e.person_id, e.hour_class having sum(e.minutes) > 0 order by 1, 2, 3, 4""").query(WorkRows::hours).list();
    }

    List<PastRow> imported() {
        return jdbc.sql("""
                        select p.id, p.past_import_id as batch, p.job, k.id as kind, p.quantity, k.unit_hours as rate,
                               p.estimated_minutes, p.actual_minutes, p.started_on, p.done_on, p.person_id
                        from past_task p
                        join task_kind o on o.id = p.task_kind_id
                        join task_kind k on k.id = coalesce(o.merged_into, o.id)
                        order by p.done_on, p.id""").query(PastRow.class).list();
    }

    List<RateRow> rates() {
        return jdbc.sql("select id, unit_hours as rate from task_kind where merged_into is null")
                .query(RateRow.class)
                .list();
    }

    record EarlierRow(UUID kind, BigDecimal rate, Instant until) {}

    /** Starting rates that were changed since, in the unit of today, the oldest first. */
    List<EarlierRow> ratesBefore() {
        return jdbc.sql("""
                        select b.task_kind_id as kind, b.unit_hours as rate, b.until_at as until
                        from starting_rate_before b
                        join task_kind k on k.id = b.task_kind_id and k.unit = b.unit and k.merged_into is null
                        order by b.until_at""").query(EarlierRow.class).list();
    }

    /** Keys of what was done of a kind under its own name, a merged one too. */
    Set<String> tasksOfKind(UUID kind) {
        return jdbc.sql("select id::text from task where task_kind_id = :kind"
                        + " union all select id::text from past_task where task_kind_id = :kind")
                .param("kind", kind)
                .query(String.class)
                .set();
    }

    /** A material line that is in no option that the client left out; by its alias. */
    private static String bought(String line) {
        return " not exists (select 1 from estimate_option_line o"
                + " join bid b on b.option_id = o.option_id and b.state = 'declined'"
                + " join bid f on f.id = b.option_of and f.state = 'accepted' where o.id = " + line + ".id) ";
    }

    /**
     * Jobs whose estimate names a material that no earlier job's did; for the first job of a shop that is any. Hardware, glue,
     * abrasives and the like do not make work unfamiliar.
     */
    Set<UUID> unfamiliarJobs() {
        return jdbc.sql("""
                        select distinct f.job_id from (
                            select distinct on (l.material_id) l.job_id
                            from estimate_material l
                            join material m on m.id = l.material_id and m.material_group not in ('hardware', 'adhesive', 'abrasive', 'other')
                            join job j on j.id = l.job_id where""" + bought("l") + """
                            order by l.material_id, j.opened_on, j.number) f""").query(UUID.class).set();
    }

    /** The same of one job. */
    boolean isUnfamiliar(UUID job) {
        return jdbc.sql("""
                        select exists (select 1 from estimate_material l
                            join material m on m.id = l.material_id and m.material_group not in ('hardware', 'adhesive', 'abrasive', 'other')
                            join job j on j.id = l.job_id
                            where l.job_id = ? and""" + bought("l") + """
                            and not exists (select 1 from estimate_material e join job o on o.id = e.job_id
                                where e.material_id = l.material_id and (o.opened_on, o.number) < (j.opened_on, j.number)
                                and""" + bought("e") + "))")
                .param(job)
                .query(Boolean.class)
                .single();
    }

    /** The tasks of one job; whether its material is new to the shop is only asked where that counts. */
    List<TaskRow> known(List<TaskRow> tasks, Collection<String> counting) {
        return !tasks.isEmpty()
                        && counting.contains(SiteCondition.UNFAMILIAR.key())
                        && isUnfamiliar(tasks.get(0).jobId())
                ? tasks.stream().map(TaskRow::onUnfamiliar).toList()
                : tasks;
    }

    record RateRow(UUID id, BigDecimal rate) {}

    List<TaskRow> tasks(Collection<UUID> ids) {
        return ids.isEmpty()
                ? List.of()
                : jdbc.sql(TASK + " where t.id in (:ids)")
                        .param("ids", ids)
                        .query(WorkRows::task)
                        .list();
    }

    List<TaskRow> tasksOf(UUID job) {
        return jdbc.sql(TASK
                        + " where t.job_id = ? and t.state not in ('dropped', 'offered') order by t.position, t.id")
                .param(job)
                .query(WorkRows::task)
                .list();
    }

    List<HoursRow> hoursOf(UUID job, LocalDate until) {
        return jdbc.sql("""
                        select job_id, task_id, person_id, hour_class, sum(minutes)::int as minutes from time_entry
                        where job_id = ? and on_date <= ?
                        group by job_id, task_id, person_id, hour_class having sum(minutes) > 0 order by 1, 2, 3, 4""").params(job, until).query(WorkRows::hours).list();
    }

    private static TaskRow task(ResultSet row, int n) throws SQLException {
        return new TaskRow(
                row.getObject("id", UUID.class),
                row.getObject("job_id", UUID.class),
                row.getObject("kind", UUID.class),
                row.getString("name"),
                row.getBigDecimal("quantity"),
                row.getBigDecimal("done"),
                row.getBigDecimal("rate"),
                row.getInt("estimated_minutes"),
                row.getString("state"),
                row.getObject("done_on", LocalDate.class),
                row.getObject("assigned_to", UUID.class),
                row.getBoolean("occupied"),
                row.getBoolean("out_of_square"),
                row.getBoolean("stairs"),
                false);
    }

    private static HoursRow hours(ResultSet row, int n) throws SQLException {
        return new HoursRow(
                row.getObject("job_id", UUID.class),
                row.getObject("task_id", UUID.class),
                row.getObject("person_id", UUID.class),
                row.getString("hour_class"),
                row.getInt("minutes"));
    }
}
