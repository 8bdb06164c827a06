package org.tallywright.trail;

import java.time.Clock;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Says in whose name the current transaction writes. The audit triggers copy it into {@code audit_entry} and refuse a
 * change that names nobody, so every service that writes calls this first.
 */
@Component
public class Trail {
    private final JdbcClient jdbc;
    private final Clock clock;

    Trail(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** The rest of this transaction is done by that person. */
    public void by(UUID person) {
        name(person.toString());
    }

    /** The rest of this transaction is done by the server itself: set-up, demo, restore. */
    public void byShop() {
        name("shop");
    }

    private void name(String who) {
        if (!TransactionSynchronizationManager.isActualTransactionActive()) {
            throw new IllegalStateException("the trail is named inside a transaction");
        }
        jdbc.sql("select set_config('tallywright.person', ?, true), set_config('tallywright.at', ?, true)")
                .params(who, clock.instant().toString())
                .query((row, n) -> row.getString(1))
                .single();
    }
}
