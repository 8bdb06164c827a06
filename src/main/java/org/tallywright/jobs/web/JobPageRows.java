package org.tallywright.jobs.web;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.TaskState;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/** What a job's page shows below its head: one query for each kind of thing, whatever their number. */
@Component
class JobPageRows {
    private final JdbcClient jdbc;

    JobPageRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record JobRow(
            LocalDate openedOn,
            @Nullable LocalDate acceptedOn,
            @Nullable LocalDate promisedOn,
            @Nullable LocalDate closedOn,
            String note,
            int version,
            String phone,
            String accessNote,
            boolean occupied,
            boolean outOfSquare,
            boolean stairs) {}

    record TaskRow(
            UUID id,
            UUID kindId,
            String name,
            String stage,
            Quantity quantity,
            Unit unit,
            int estimatedMinutes,
            TaskState state,
            boolean neverNeeded,
            @Nullable LocalDate plannedOn,
            @Nullable LocalDate doneOn,
            @Nullable Quantity quantityDone,
            boolean confirmed,
            @Nullable UUID pieceId,
            @Nullable UUID assignedTo,
            @Nullable String assignee,
            boolean onSite,
            String caution,
            String cautionSource) {}

    record PieceRow(
            UUID id,
            String name,
            @Nullable String kind,
            @Nullable Length width,
            @Nullable Length height,
            @Nullable Length depth,
            int count,
            String note) {}

    record MeasureRow(
            UUID id,
            @Nullable UUID pieceId,
            String name,
            Length length,
            LocalDate measuredOn,
            @Nullable String measuredBy,
            String note) {}

    record PunchRow(
            UUID id,
            String text,
            @Nullable String piece,
            LocalDate raisedOn,
            @Nullable String raisedBy,
            @Nullable LocalDate doneOn,
            @Nullable String doneBy,
            @Nullable LocalDate signedOffOn,
            String signedOffBy) {}

    JobRow job(UUID jobId) {
        return jdbc.sql("""
                        select j.opened_on, j.accepted_on, j.promised_on, j.closed_on, j.note, j.version, c.phone,
                            s.access_note, s.occupied, s.out_of_square, s.stairs
                        from job j join client c on c.id = j.client_id join site s on s.id = j.site_id
                        where j.id = ?""")
                .param(jobId)
                .query((row, n) -> new JobRow(
                        row.getObject(1, LocalDate.class),
                        day(row, "accepted_on"),
                        day(row, "promised_on"),
                        day(row, "closed_on"),
                        row.getString(5),
                        row.getInt(6),
                        row.getString(7),
                        row.getString(8),
                        row.getBoolean(9),
                        row.getBoolean(10),
                        row.getBoolean(11)))
                .single();
    }

    List<TaskRow> tasks(UUID jobId) {
        return jdbc.sql("""
                        select t.id, t.task_kind_id, t.name, s.name as stage, t.quantity, t.unit, t.estimated_minutes,
                            t.state, t.never_needed, t.planned_on, t.done_on, t.quantity_done, t.quantity_confirmed,
                            t.piece_id, t.assigned_to, p.name as assignee, k.place, k.caution, k.caution_source
                        from task t join stage s on s.id = t.stage_id join task_kind k on k.id = t.task_kind_id
                        left join person p on p.id = t.assigned_to
                        where t.job_id = ? order by s.position, t.position, t.id""").param(jobId).query(JobPageRows::task).list();
    }

    private static TaskRow task(ResultSet row, int n) throws SQLException {
        BigDecimal done = row.getBigDecimal("quantity_done");
        return new TaskRow(
                row.getObject("id", UUID.class),
                row.getObject("task_kind_id", UUID.class),
                row.getString("name"),
                row.getString("stage"),
                Quantity.of(row.getBigDecimal("quantity")),
                Unit.of(row.getString("unit")),
                row.getInt("estimated_minutes"),
                TaskState.of(row.getString("state")),
                row.getBoolean("never_needed"),
                day(row, "planned_on"),
                day(row, "done_on"),
                done == null ? null : Quantity.of(done),
                row.getBoolean("quantity_confirmed"),
                row.getObject("piece_id", UUID.class),
                row.getObject("assigned_to", UUID.class),
                row.getString("assignee"),
                row.getString("place").equals("site"),
                row.getString("caution"),
                row.getString("caution_source"));
    }

    /** For each kind of the job's open tasks, the kinds that usually come first; a merged one and what it is counted as. */
    Map<UUID, Set<UUID>> before(UUID jobId) {
        Map<UUID, Set<UUID>> before = new HashMap<>();
        jdbc.sql("""
                        select distinct b.task_kind_id, f.id from task_kind_before b
                        join task t on t.task_kind_id = b.task_kind_id
                        join task_kind k on k.id = b.before_kind_id
                        cross join lateral (values (k.id), (k.merged_into)) f (id)
                        where f.id <> t.task_kind_id and t.job_id = ? and t.state in ('planned', 'started')""").param(jobId).query(row -> {
            before.computeIfAbsent(row.getObject(1, UUID.class), k -> new HashSet<>())
                    .add(row.getObject(2, UUID.class));
        });
        return before;
    }

    List<PieceRow> pieces(UUID jobId) {
        return jdbc.sql("""
                        select p.id, p.name, k.name as kind, p.width, p.height, p.depth, p.count, p.note
                        from piece p left join piece_kind k on k.id = p.piece_kind_id
                        where p.job_id = ? order by p.position, p.id""")
                .param(jobId)
                .query((row, n) -> new PieceRow(
                        row.getObject("id", UUID.class),
                        row.getString("name"),
                        row.getString("kind"),
                        length(row, "width"),
                        length(row, "height"),
                        length(row, "depth"),
                        row.getInt("count"),
                        row.getString("note")))
                .list();
    }

    List<MeasureRow> measures(UUID jobId) {
        return jdbc.sql("""
                        select m.id, m.piece_id, m.name, m.length, m.measured_on, p.name as person, m.note
                        from site_measure m left join person p on p.id = m.measured_by
                        where m.job_id = ? order by m.measured_on, m.id""")
                .param(jobId)
                .query((row, n) -> new MeasureRow(
                        row.getObject("id", UUID.class),
                        row.getObject("piece_id", UUID.class),
                        row.getString("name"),
                        new Length(row.getLong("length")),
                        row.getObject("measured_on", LocalDate.class),
                        row.getString("person"),
                        row.getString("note")))
                .list();
    }

    List<PunchRow> punchList(UUID jobId) {
        return jdbc.sql("""
                        select i.id, i.text, pc.name as piece, i.raised_on, r.name as raiser, i.done_on, d.name as doer,
                            i.signed_off_on, i.signed_off_by
                        from punch_item i left join piece pc on pc.id = i.piece_id
                        left join person r on r.id = i.raised_by left join person d on d.id = i.done_by
                        where i.job_id = ? order by i.raised_on, i.id""")
                .param(jobId)
                .query((row, n) -> new PunchRow(
                        row.getObject("id", UUID.class),
                        row.getString("text"),
                        row.getString("piece"),
                        row.getObject("raised_on", LocalDate.class),
                        row.getString("raiser"),
                        day(row, "done_on"),
                        row.getString("doer"),
                        day(row, "signed_off_on"),
                        row.getString("signed_off_by")))
                .list();
    }

    static @Nullable LocalDate day(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }

    static @Nullable Length length(ResultSet row, String column) throws SQLException {
        long units = row.getLong(column);
        return row.wasNull() ? null : new Length(units);
    }
}
