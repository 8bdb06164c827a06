package org.tallywright.db;

import org.flywaydb.core.Flyway;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.stereotype.Component;

/** Looks before it migrates: a database of a newer build stays as it is. */
@Component
class MigrationAtStart implements FlywayMigrationStrategy {
    private final ObjectProvider<BeforeFirstUse> preparations;

    MigrationAtStart(ObjectProvider<BeforeFirstUse> preparations) {
        this.preparations = preparations;
    }

    @Override
    public void migrate(Flyway flyway) {
        ServerVersion.refuseOlder(flyway.getConfiguration().getDataSource());
        SchemaVersion.refuseNewer(flyway);
        preparations.orderedStream().forEach(preparation -> preparation.prepare(flyway));
        flyway.migrate();
    }
}
