package org.tallywright.jobs.web;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.MeasureDetails;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotHere;

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

    /**
     * The task kinds that a piece, or the whole job, has tasks of already.
     *
     * @param pieceId null for tasks of the whole job
     */
    Set<UUID> kindsOf(UUID jobId, @Nullable UUID pieceId) {
        return jdbc
                .sql("""
                        select distinct coalesce(k.merged_into, k.id) from task t join task_kind k on k.id = t.task_kind_id
                        where job_id = :job and piece_id is not distinct from cast(:piece as uuid)""")
                .param("job", jobId)
                .param("piece", pieceId == null ? null : pieceId.toString())
                .query(UUID.class)
                .list()
                .stream()
                .collect(Collectors.toSet());
    }
}
