package org.tallywright.proof;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Makes ten times as many rows of what a job holds, and fifty jobs more, as copies. */
final class Growth {
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    Growth(JdbcClient jdbc, TransactionTemplate transaction) {
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    /** A line that no bid has: with one, the estimate shows its price and forecast however many lines there are. */
    void unsoldTask(UUID job) {
        transaction.executeWithoutResult(status -> {
            jdbc.sql("set local session_replication_role = replica").update();
            jdbc.sql("""
                            insert into task select (jsonb_populate_record(null::task,
                                to_jsonb(t) || jsonb_build_object('id', gen_random_uuid()))).*
                            from (select * from task where job_id = ? order by id limit 1) t""").param(job).update();
        });
    }

    void tenfold(UUID job) {
        transaction.executeWithoutResult(status -> {
            jdbc.sql("set local session_replication_role = replica").update();
            for (String table : new String[] {
                "piece",
                "site_measure",
                "task",
                "wait",
                "punch_item",
                "estimate_material",
                "estimate_other",
                "purchase",
                "material_use",
                "material_return",
                "offcut",
                "client_note",
                "job_event"
            }) {
                copies(table, "job_id = '" + job + "'", "'id', gen_random_uuid()");
            }
            copies(
                    "photo",
                    "job_id = '" + job + "'",
                    "'id', gen_random_uuid(), 'original_hash', '\\x' || encode(sha256((t.id || ' ' || n)::bytea), 'hex')");
            copies("time_entry", "job_id = '" + job + "' and starts_at is null", "'id', gen_random_uuid()");
            copies(
                    "job",
                    "id = '" + job + "'",
                    "'id', gen_random_uuid(), 'year', 2025, 'sequence', 800 + n, 'number', '25-' || (800 + n)");
            jdbc.sql("""
                            insert into job_stage select (jsonb_populate_record(null::job_stage,
                                to_jsonb(s) || jsonb_build_object('job_id', j.id))).*
                            from job_stage s, job j where s.job_id = ? and j.year = 2025 and j.sequence > 800""").param(job).update();
        });
    }

    private void copies(String table, String which, String changed) {
        jdbc.sql("""
                        insert into %1$s select (jsonb_populate_record(null::%1$s, to_jsonb(t) || jsonb_build_object(%3$s))).*
                        from (select * from %1$s where %2$s order by 1 limit 5) t, generate_series(1, 50) n
                        where '%1$s' = 'job' or n <= 10""".formatted(table, which, changed)).update();
    }
}
