package org.tallywright.jobs.web;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.MeasureDetails;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;

/** One piece or measure of a job as kept, for its form. */
@Component
class PieceRows {
    private final JdbcClient jdbc;

    PieceRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Kept<T>(T details, int version) {}

    Kept<PieceDetails> piece(UUID jobId, UUID pieceId) {
        return jdbc.sql("""
                        select piece_kind_id, name, width, height, depth, count, note, version
                        from piece where id = ? and job_id = ?""")
                .params(pieceId, jobId)
                .query((row, n) -> new Kept<>(
                        new PieceDetails(
                                row.getObject(1, UUID.class),
                                row.getString(2),
                                JobPageRows.length(row, "width"),
                                JobPageRows.length(row, "height"),
                                JobPageRows.length(row, "depth"),
                                row.getInt(6),
                                row.getString(7)),
                        row.getInt(8)))
                .optional()
                .orElseThrow(() -> new NotHere("piece"));
    }

    Kept<MeasureDetails> measure(UUID jobId, UUID measureId) {
        return jdbc.sql("""
                        select piece_id, name, length, measured_on, note, version
                        from site_measure where id = ? and job_id = ?""")
                .params(measureId, jobId)
                .query((row, n) -> new Kept<>(
                        new MeasureDetails(
                                row.getObject(1, UUID.class),
                                row.getString(2),
                                new Length(row.getLong(3)),
                                row.getObject(4, LocalDate.class),
                                row.getString(5)),
                        row.getInt(6)))
                .optional()
                .orElseThrow(() -> new NotHere("measure"));
    }

    /** The pieces of a job to pick from, by id. */
    Map<String, String> choice(UUID jobId) {
        Map<String, String> options = new LinkedHashMap<>();
        jdbc.sql("select id, name from piece where job_id = ? order by position, id")
                .param(jobId)
                .query(row -> {
                    options.put(row.getString(1), row.getString(2));
                });
        return options;
    }

    /** The task kinds that a piece has tasks of already. */
    Set<UUID> kindsOf(UUID jobId, UUID pieceId) {
        return jdbc.sql("""
                        select distinct coalesce(k.merged_into, k.id) from task t join task_kind k on k.id = t.task_kind_id
                        where job_id = :job and piece_id = :piece""").param("job", jobId).param("piece", pieceId).query(UUID.class).list().stream()
                .collect(Collectors.toSet());
    }

    /**
     * How much the whole job has already, by task kind, in the kind's unit; nothing where all such tasks are dropped, or counted in
     * another unit.
     */
    Map<UUID, Quantity> ofWholeJob(UUID jobId) {
        Map<UUID, Quantity> has = new HashMap<>();
        jdbc.sql("""
                        select c.id, coalesce(sum(t.quantity) filter (where t.state <> 'dropped' and t.unit = c.unit), 0)
                        from task t join task_kind k on k.id = t.task_kind_id join task_kind c on c.id = coalesce(k.merged_into, k.id)
                        where t.job_id = ? and t.piece_id is null group by c.id""").param(jobId).query(row -> {
            has.put(row.getObject(1, UUID.class), Quantity.of(row.getBigDecimal(2)));
        });
        return has;
    }
}
