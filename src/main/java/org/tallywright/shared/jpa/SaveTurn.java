package org.tallywright.shared.jpa;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lets saves of one thing wait for each other. A double tap then finds what the first tap saved and is seen to be a
 * repeat, where it would otherwise fail on the key.
 */
@Component
public class SaveTurn {
    private final JdbcClient jdbc;

    SaveTurn(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Waits until no other transaction saves the thing with that id; the turn ends with this transaction. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void of(UUID id) {
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended(:id, 0))")
                .param("id", id.toString())
                .query((row, number) -> true)
                .single();
    }
}
