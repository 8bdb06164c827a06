package org.tallywright.costing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.HourClass;

/**
 * The finished tasks of closed jobs, for learning hours per unit. A task that nobody logged on teaches nothing (a blank is
 * not zero hours), nor does one of which nothing was done; both are left out.
 */
@Component
@Transactional(readOnly = true)
public class FinishedTasks {
    private static final String ROWS = """
            select t.id as task_id, t.job_id, t.task_kind_id, t.done_on, t.unit, coalesce(t.quantity_done, t.quantity) as quantity,
                   t.quantity_confirmed, t.starting_unit_hours, s.occupied, s.out_of_square, s.stairs,
                   e.person_id, sum(e.minutes)::int as minutes
            from task t
            join job j on j.id = t.job_id
            join site s on s.id = j.site_id
            join time_entry e on e.task_id = t.id and e.hour_class in (%s)
            where t.state = 'done' and coalesce(t.quantity_done, t.quantity) > 0 and %s
            group by t.id, s.id, e.person_id having sum(e.minutes) > 0 order by t.done_on, t.id, e.person_id""";

    private static final String RATE_CLASSES = Arrays.stream(HourClass.values())
            .filter(HourClass::countsInRate)
            .map(hourClass -> "'" + hourClass.code() + "'")
            .collect(Collectors.joining(", "));

    private final JdbcClient jdbc;

    FinishedTasks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of one job, whatever its state. */
    public List<FinishedTask> ofJob(UUID job) {
        return group(jdbc.sql(ROWS.formatted(RATE_CLASSES, "t.job_id = ?"))
                .param(job)
                .query(Row.class)
                .list());
    }

    /** Of all closed jobs, oldest first. */
    public List<FinishedTask> ofClosedJobs() {
        return group(jdbc.sql(ROWS.formatted(RATE_CLASSES, "j.state = 'closed'"))
                .query(Row.class)
                .list());
    }

    private static List<FinishedTask> group(List<Row> rows) {
        Map<UUID, List<Row>> byTask = new LinkedHashMap<>();
        rows.forEach(row ->
                byTask.computeIfAbsent(row.taskId(), id -> new ArrayList<>()).add(row));
        return byTask.values().stream().map(FinishedTasks::one).toList();
    }

    private static FinishedTask one(List<Row> rows) {
        Row first = rows.get(0);
        Map<UUID, Integer> shares = new HashMap<>();
        rows.forEach(row -> shares.put(row.personId(), row.minutes()));
        return new FinishedTask(
                first.taskId(),
                first.jobId(),
                first.taskKindId(),
                first.doneOn(),
                first.unit(),
                first.quantity(),
                first.quantityConfirmed(),
                first.startingUnitHours(),
                first.quantity().multiply(first.startingUnitHours()),
                shares.values().stream().mapToInt(Integer::intValue).sum(),
                shares,
                first.conditions());
    }

    /** One task and person. */
    record Row(
            UUID taskId,
            UUID jobId,
            UUID taskKindId,
            LocalDate doneOn,
            String unit,
            BigDecimal quantity,
            boolean quantityConfirmed,
            BigDecimal startingUnitHours,
            boolean occupied,
            boolean outOfSquare,
            boolean stairs,
            UUID personId,
            int minutes) {

        Set<String> conditions() {
            Set<String> held = new TreeSet<>();
            if (occupied) {
                held.add("occupied");
            }
            if (outOfSquare) {
                held.add("out-of-square");
            }
            if (stairs) {
                held.add("stairs");
            }
            return held;
        }
    }
}
