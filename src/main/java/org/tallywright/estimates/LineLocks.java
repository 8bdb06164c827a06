package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Refused;

/** Keeps lines as agreed: one in an accepted bid stays, one in a change order that is out waits for its answer. */
@Component
class LineLocks {
    private final JdbcClient jdbc;

    LineLocks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void guardTask(UUID task, LocalDate today) {
        guard("bid_task", "task_id", task, today);
    }

    void guardMaterial(UUID line, LocalDate today) {
        guard("bid_material", "estimate_material_id", line, today);
    }

    void guardOther(UUID line, LocalDate today) {
        guard("bid_other", "estimate_other_id", line, today);
    }

    private void guard(String table, String column, UUID line, LocalDate today) {
        record Holder(String number, String state) {}
        List<Holder> holders = jdbc.sql("select b.number, b.state from " + table
                        + " x join bid b on b.id = x.bid_id left join bid of on of.id = b.option_of where x." + column
                        + " = ? and (b.state = 'accepted' or coalesce(of.kind, b.kind) = 'change order'"
                        + " and b.state = 'issued' and b.valid_until >= ?) order by b.state")
                .params(line, today)
                .query((row, n) -> new Holder(row.getString(1), row.getString(2)))
                .list();
        for (Holder holder : holders) {
            if (holder.state().equals(BidState.ACCEPTED.code())) {
                throw new Refused("This line is in " + holder.number()
                        + ", which was accepted, and stays as agreed. Add a line for what changes.");
            }
            throw new Refused("This line is in " + holder.number() + ", which is out. Withdraw it first.");
        }
    }

    void guardPiece(UUID job, @Nullable UUID piece) {
        if (piece != null
                && !jdbc.sql("select exists (select 1 from piece where id = ? and job_id = ?)")
                        .params(piece, job)
                        .query(Boolean.class)
                        .single()) {
            throw new Refused("piece", "Pick a piece of this job.");
        }
    }
}
