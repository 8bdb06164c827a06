package org.tallywright.jobs;

import java.time.LocalDate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Hands out job numbers, one opening at a time, so that two at once never get the same one and no number is lost. */
@Component
class JobNumbers {
    private static final long LOCK = 0x7461_6c6c_796a_6f62L;

    private final JdbcClient jdbc;

    JobNumbers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Waits for any other opening to end its transaction. */
    void lock() {
        jdbc.sql("select pg_advisory_xact_lock(?)")
                .param(LOCK)
                .query((row, n) -> n)
                .single();
    }

    JobNumber next(LocalDate openedOn) {
        int last = jdbc.sql("select coalesce(max(sequence), 0) from job where year = ?")
                .param(openedOn.getYear())
                .query(Integer.class)
                .single();
        return new JobNumber(openedOn.getYear(), last + 1);
    }
}
