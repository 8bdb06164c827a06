package org.tallywright.demo;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What was accepted, line by line; a line belongs to the accepted bid or to its change order. */
final class DemoBidLines {
    private DemoBidLines() {}

    static void load(DemoLedger ledger) {
        ledger.jdbc().update("""
                insert into bid_task (bid_id, position, job_id, task_id, piece_name, stage_name, name, quantity, unit,
                    starting_unit_hours, unit_hours, estimated_minutes)
                select b.id, row_number() over (partition by b.id order by s.position, t.position), t.job_id, t.id, coalesce(p.name, ''),
                       s.name, t.name, t.quantity, t.unit, t.starting_unit_hours, t.unit_hours, t.estimated_minutes
                from task t join stage s on s.id = t.stage_id left join piece p on p.id = t.piece_id
                join bid b on b.job_id = t.job_id and b.kind = 'bid' and b.state = 'accepted'""");
        moveToChangeOrders(ledger);
        countFromNought(ledger);
        int n = 0;
        Map<UUID, Integer> materials = new HashMap<>();
        Map<UUID, Integer> others = new HashMap<>();
        for (DemoRow row : DemoFile.rows("estimate_materials")) {
            UUID line = ledger.id("estimate material/" + n++);
            UUID bid = acceptedBid(ledger, row);
            if (bid == null) {
                continue;
            }
            if (row.get("group").equals("other")) {
                ledger.jdbc()
                        .update(
                                "insert into bid_other (bid_id, position, description, amount, estimate_other_id)"
                                        + " select ?, ?, description, amount, id from estimate_other where id = ?",
                                bid,
                                others.merge(bid, 1, Integer::sum) - 1,
                                line);
            } else {
                ledger.jdbc().update("""
                        insert into bid_material (bid_id, position, material_id, name, unit, net_quantity, yield, purchase_quantity,
                            unit_price, freight_amount, amount, estimate_material_id)
                        select ?, ?, m.id, m.name, m.unit, e.net_quantity, e.yield, e.purchase_quantity, e.unit_price, 0, e.amount, e.id
                        from estimate_material e join material m on m.id = e.material_id where e.id = ?""", bid, materials.merge(bid, 1, Integer::sum) - 1, line);
            }
        }
    }

    private static @Nullable UUID acceptedBid(DemoLedger ledger, DemoRow row) {
        String mark = row.get("change_order");
        if (!mark.isEmpty()) {
            return ledger.idOrNull("bid/" + row.get("job") + "/" + mark);
        }
        UUID revised = ledger.idOrNull("bid/" + row.get("job") + "/B");
        return revised != null ? revised : ledger.idOrNull("bid/" + row.get("job") + "/A");
    }

    /** The lines of a change order were taken into the bid above with all others; they are put where they belong. */
    private static void moveToChangeOrders(DemoLedger ledger) {
        Map<UUID, Integer> positions = new HashMap<>();
        for (DemoRow row : DemoFile.rows("estimate_lines")) {
            if (row.get("change_order").isEmpty()) {
                continue;
            }
            UUID order = ledger.id("bid/" + row.get("job") + "/" + row.get("change_order"));
            UUID task = ledger.id("task/" + row.get("job") + "/" + row.get("task_kind") + "/" + row.get("piece") + "/"
                    + row.get("change_order"));
            ledger.jdbc().update("""
                    insert into bid_task select ?, ?, job_id, task_id, piece_name, stage_name, name, quantity, unit,
                        starting_unit_hours, unit_hours, estimated_minutes from bid_task where task_id = ?""", order, positions.merge(order, 1, Integer::sum), task);
            ledger.jdbc().update("delete from bid_task where task_id = ? and bid_id <> ?", task, order);
        }
    }

    /** A list read back by position has no gaps and starts at nought; else it would hold lines that are not there. */
    private static void countFromNought(DemoLedger ledger) {
        ledger.jdbc().update("""
                with lines as (delete from bid_task returning *)
                insert into bid_task (bid_id, position, job_id, task_id, piece_name, stage_name, name, quantity, unit,
                    starting_unit_hours, unit_hours, estimated_minutes)
                select bid_id, row_number() over (partition by bid_id order by position) - 1, job_id, task_id, piece_name, stage_name,
                    name, quantity, unit, starting_unit_hours, unit_hours, estimated_minutes from lines""");
    }
}
