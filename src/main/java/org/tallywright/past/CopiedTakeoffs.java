package org.tallywright.past;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.takeoff.TypedTakeoff;

/** The record of the answers and parts by hand that came in with copied pieces. */
@Component
class CopiedTakeoffs {
    private final JdbcClient jdbc;

    CopiedTakeoffs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Beside the line of that piece in the record of the copy. */
    void keep(UUID copy, UUID job, UUID piece, TypedTakeoff came) {
        jdbc.sql("update past_copy_line set answers = ? where copy_id = ? and piece_id = ?")
                .params(came.answers(), copy, piece)
                .update();
        came.parts()
                .forEach((part, version) -> jdbc.sql(
                                "insert into past_copy_part (id, copy_id, job_id, part_version) values (?, ?, ?, ?)")
                        .params(part, copy, job, version)
                        .update());
    }

    /** By piece, as far as the pieces are there. */
    Map<UUID, TypedTakeoff> of(UUID copy) {
        Map<UUID, Map<UUID, Integer>> parts = new HashMap<>();
        jdbc.sql("""
                        select p.piece_id, c.id, c.part_version from past_copy_part c join part p on p.id = c.id
                        where c.copy_id = ?""").param(copy).query(row -> {
            parts.computeIfAbsent(row.getObject(1, UUID.class), piece -> new HashMap<>())
                    .put(row.getObject(2, UUID.class), row.getInt(3));
        });
        Map<UUID, TypedTakeoff> came = new HashMap<>();
        jdbc.sql("select piece_id, answers from past_copy_line where copy_id = ? and piece_id is not null")
                .param(copy)
                .query(row -> {
                    UUID piece = row.getObject(1, UUID.class);
                    came.put(piece, new TypedTakeoff(row.getString(2), parts.getOrDefault(piece, Map.of())));
                });
        return came;
    }
}
