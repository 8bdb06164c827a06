package org.tallywright.db;

import org.flywaydb.core.Flyway;

/** Something to be done with the database at the start, before its tables are brought up to date and used. */
@FunctionalInterface
public interface BeforeFirstUse {
    void prepare(Flyway flyway);
}
