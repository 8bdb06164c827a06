package org.tallywright.proof.planted.engine;

import java.time.LocalDate;
import org.springframework.jdbc.core.simple.JdbcClient;

/** An engine that asks the database, and the machine for its day. */
public record PlantedEngine(JdbcClient jdbc) {
    @SuppressWarnings("JavaTimeDefaultTimeZone")
    public LocalDate day() {
        return LocalDate.now();
    }
}
