package org.tallywright.estimates;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.jobs.TaskDetails;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/** The job's tasks as lines of its estimate: what an estimator changes of them, and what stays as agreed. */
@Service
public class EstimateTasks {
    private static final UnitHours MOST = UnitHours.of("1000");

    private final JobDesk jobs;
    private final TaskDesk tasks;
    private final LineLocks locks;
    private final ShopClock clock;
    private final JdbcClient jdbc;

    EstimateTasks(JobDesk jobs, TaskDesk tasks, LineLocks locks, ShopClock clock, JdbcClient jdbc) {
        this.jobs = jobs;
        this.tasks = tasks;
        this.locks = locks;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /**
     * A task as its form needs it.
     *
     * @param low usual lowest hours per unit, or null where the catalogue has no range
     */
    public record Line(
            UUID id,
            int version,
            String name,
            Unit unit,
            UnitHours startingUnitHours,
            @Nullable UnitHours low,
            @Nullable UnitHours high,
            String basis,
            TaskDetails details) {}

    /** @param version null for a task that the page takes for new; unitHours null for the catalogue's rate */
    public record Draft(
            UUID id,
            @Nullable Integer version,
            UUID taskKindId,
            @Nullable UUID pieceId,
            Quantity quantity,
            @Nullable UnitHours unitHours) {}

    public record Kind(UUID id, String stage, String name, Unit unit, UnitHours unitHours) {}

    public record Piece(UUID id, String name) {}

    /** Adds a task to the job, or changes its quantity, rate or piece; who does it and when stays as planned. */
    @Transactional
    public void save(UUID job, Draft draft, UUID by) {
        jobs.holdOpen(job, by);
        if (draft.quantity().isZero()) {
            throw new Refused("quantity", "Write a quantity above zero.");
        }
        if (draft.unitHours() != null
                && (draft.unitHours().amount().signum() == 0
                        || draft.unitHours().compareTo(MOST) > 0)) {
            throw new Refused("unitHours", "Hours per unit lie above zero and go up to 1,000.");
        }
        TaskDetails details = find(job, draft.id())
                .map(line -> changed(line, draft))
                .orElseGet(() -> new TaskDetails(
                        draft.taskKindId(),
                        draft.pieceId(),
                        null,
                        "",
                        draft.quantity(),
                        draft.unitHours(),
                        null,
                        null));
        tasks.save(job, draft.id(), draft.version(), details, by);
    }

    private TaskDetails changed(Line line, Draft draft) {
        TaskDetails old = line.details();
        TaskDetails details = new TaskDetails(
                old.taskKindId(),
                draft.pieceId(),
                old.stageId(),
                old.name(),
                draft.quantity(),
                draft.unitHours() == null ? line.startingUnitHours() : draft.unitHours(),
                old.plannedOn(),
                old.assignedTo());
        if (!details.equals(old)) {
            locks.guardTask(line.id(), clock.today());
        }
        return details;
    }

    /** Leaves a task out of the job. */
    @Transactional
    public void drop(UUID job, UUID task, UUID by) {
        jobs.holdOpen(job, by);
        locks.guardTask(find(job, task).orElseThrow(() -> new NotHere("task")).id(), clock.today());
        tasks.drop(job, task, false, by);
    }

    @Transactional(readOnly = true)
    public Optional<Line> find(UUID job, UUID task) {
        return jdbc.sql("""
                        select t.*, k.low_unit_hours, k.high_unit_hours, k.basis from task t
                        join task_kind k on k.id = t.task_kind_id where t.id = ? and t.job_id = ?""").params(task, job).query(EstimateTasks::line).optional();
    }

    /** Kinds that can be picked, by stage and name. */
    @Transactional(readOnly = true)
    public List<Kind> kinds() {
        return jdbc.sql("""
                        select k.id, s.name as stage, k.name, k.unit, k.unit_hours from task_kind k
                        join stage s on s.id = k.stage_id where k.active order by s.position, lower(k.name)""")
                .query((row, n) -> new Kind(
                        row.getObject(1, UUID.class),
                        row.getString(2),
                        row.getString(3),
                        Unit.of(row.getString(4)),
                        UnitHours.of(row.getBigDecimal(5))))
                .list();
    }

    @Transactional(readOnly = true)
    public List<Piece> pieces(UUID job) {
        return jdbc.sql("select id, name from piece where job_id = ? order by position, id")
                .param(job)
                .query((row, n) -> new Piece(row.getObject(1, UUID.class), row.getString(2)))
                .list();
    }

    private static Line line(ResultSet row, int n) throws SQLException {
        UnitHours unitHours = UnitHours.of(row.getBigDecimal("unit_hours"));
        TaskDetails details = new TaskDetails(
                Objects.requireNonNull(row.getObject("task_kind_id", UUID.class)),
                row.getObject("piece_id", UUID.class),
                row.getObject("stage_id", UUID.class),
                row.getString("name"),
                Quantity.of(row.getBigDecimal("quantity")),
                unitHours,
                row.getObject("planned_on", LocalDate.class),
                row.getObject("assigned_to", UUID.class));
        return new Line(
                row.getObject("id", UUID.class),
                row.getInt("version"),
                row.getString("name"),
                Unit.of(row.getString("unit")),
                UnitHours.of(row.getBigDecimal("starting_unit_hours")),
                rate(row, "low_unit_hours"),
                rate(row, "high_unit_hours"),
                row.getString("basis"),
                details);
    }

    private static @Nullable UnitHours rate(ResultSet row, String column) throws SQLException {
        var rate = row.getBigDecimal(column);
        return rate == null ? null : UnitHours.of(rate);
    }
}
