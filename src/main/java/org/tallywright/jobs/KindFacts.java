package org.tallywright.jobs;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/** What a task copies from its kind in the catalogue, and the waits that it starts when it is done. */
@Component
class KindFacts {
    private final JdbcClient jdbc;

    KindFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Kind(UUID id, String name, UUID stageId, Unit unit, UnitHours unitHours) {}

    record KindWait(int position, String what, int minutes) {}

    Optional<Kind> find(UUID kindId) {
        return jdbc.sql("select id, name, stage_id, unit, unit_hours from task_kind where id = ?")
                .param(kindId)
                .query((row, n) -> new Kind(
                        row.getObject(1, UUID.class),
                        row.getString(2),
                        row.getObject(3, UUID.class),
                        Unit.of(row.getString(4)),
                        UnitHours.of(row.getBigDecimal(5))))
                .optional();
    }

    /** The kind that new work of that one is: itself, or the one that it was merged into. */
    UUID countedAs(UUID kindId) {
        return jdbc.sql("select coalesce(merged_into, id) from task_kind where id = ?")
                .param(kindId)
                .query(UUID.class)
                .optional()
                .orElse(kindId);
    }

    List<KindWait> waits(UUID kindId) {
        return jdbc.sql("select position, what, minutes from task_kind_wait where task_kind_id = ? order by position")
                .param(kindId)
                .query((row, n) -> new KindWait(row.getInt(1), row.getString(2), row.getInt(3)))
                .list();
    }

    boolean stageExists(UUID stageId) {
        return exists("select exists (select 1 from stage where id = ?)", stageId);
    }

    boolean pieceKindExists(UUID pieceKindId) {
        return exists("select exists (select 1 from piece_kind where id = ?)", pieceKindId);
    }

    /** Active and of a role that works on jobs. */
    boolean isCrew(UUID personId) {
        return exists(
                "select exists (select 1 from person where id = ? and active and role <> 'bookkeeper')", personId);
    }

    private boolean exists(String sql, UUID id) {
        return jdbc.sql(sql).param(id).query(Boolean.class).single();
    }
}
