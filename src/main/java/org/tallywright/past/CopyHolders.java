package org.tallywright.past;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Refused;

/**
 * Keeps a copy in the job while a bid or an option holds a line of it. The database alone would keep its tasks, but let its
 * material and other costs go out of an option unseen.
 */
@Component
class CopyHolders {
    private static final String BIDS = """
            select b.number from past_copy_line l
            join bid b on exists (select 1 from bid_task x where x.bid_id = b.id and x.task_id = l.task_id)
                or exists (select 1 from bid_material x where x.bid_id = b.id and x.estimate_material_id = l.estimate_material_id)
                or exists (select 1 from bid_other x where x.bid_id = b.id and x.estimate_other_id = l.estimate_other_id)
            where l.copy_id = ? and b.job_id = l.job_id order by b.issued_at, b.number limit 1""";

    private static final String OPTIONS = """
            select o.name from past_copy_line l
            join estimate_option_line x on x.id = l.id join estimate_option o on o.id = x.option_id
            where l.copy_id = ? order by o.position, o.id limit 1""";

    private final JdbcClient jdbc;

    CopyHolders(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @throws Refused with the first bid, whatever became of it, or else the first option that holds a line */
    void guard(UUID copy) {
        jdbc.sql(BIDS).param(copy).query(String.class).optional().ifPresent(number -> {
            throw new Refused(
                    number + " holds lines of this copy, so it stays. Leave out one by one what is not needed.");
        });
        jdbc.sql(OPTIONS).param(copy).query(String.class).optional().ifPresent(name -> {
            throw new Refused(
                    "The option \"" + name + "\" holds lines of this copy. Take them out of the option first.");
        });
    }
}
