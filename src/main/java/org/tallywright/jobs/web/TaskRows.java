package org.tallywright.jobs.web;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.catalog.Stages;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.jobs.TaskDetails;
import org.tallywright.people.People;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitHours;

/** One task of a job as kept, for its form, and what the form offers. */
@Component
class TaskRows {
    private final JdbcClient jdbc;
    private final TaskKinds kinds;
    private final Stages stages;
    private final People people;
    private final PieceRows pieces;

    TaskRows(JdbcClient jdbc, TaskKinds kinds, Stages stages, People people, PieceRows pieces) {
        this.jdbc = jdbc;
        this.kinds = kinds;
        this.stages = stages;
        this.people = people;
        this.pieces = pieces;
    }

    TaskForm form(UUID jobId, UUID taskId) {
        return jdbc.sql("""
                        select task_kind_id, piece_id, stage_id, name, quantity, unit_hours, planned_on, assigned_to,
                            version
                        from task where id = ? and job_id = ?""")
                .params(taskId, jobId)
                .query((row, n) -> TaskForm.of(
                        taskId,
                        row.getInt(9),
                        new TaskDetails(
                                row.getObject(1, UUID.class),
                                row.getObject(2, UUID.class),
                                row.getObject(3, UUID.class),
                                row.getString(4),
                                Quantity.of(row.getBigDecimal(5)),
                                UnitHours.of(row.getBigDecimal(6)),
                                row.getObject(7, LocalDate.class),
                                row.getObject(8, UUID.class))))
                .optional()
                .orElseThrow(() -> new NotHere("task"));
    }

    int version(UUID jobId, UUID taskId) {
        Integer version = form(jobId, taskId).version();
        return version == null ? 0 : version;
    }

    TaskChoices choices(UUID jobId) {
        Map<String, String> kindNames = new LinkedHashMap<>();
        kinds.active()
                .forEach(k -> kindNames.put(k.id().toString(), k.stageName() + ": " + k.name() + ", " + k.unit()));
        Map<String, String> stageNames = new LinkedHashMap<>();
        stages.active().forEach(s -> stageNames.put(s.id().toString(), s.name()));
        Map<String, String> names = new LinkedHashMap<>();
        people.crew().forEach(p -> names.put(p.id().toString(), p.name()));
        return new TaskChoices(kindNames, pieces.choice(jobId), stageNames, names);
    }
}
