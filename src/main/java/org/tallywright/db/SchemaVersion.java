package org.tallywright.db;

import java.util.Arrays;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationVersion;
import org.tallywright.server.StartRefused;

/** What version of the tables a database has, and what this build brings. */
public final class SchemaVersion {
    private SchemaVersion() {}

    /** A database that a newer build has changed is left alone: this build would misread it. */
    public static void refuseNewer(Flyway flyway) {
        MigrationVersion known = newestKnown(flyway);
        Arrays.stream(flyway.info().applied())
                .map(MigrationInfo::getVersion)
                .filter(version -> version != null && version.isNewerThan(known))
                .findFirst()
                .ifPresent(version -> {
                    throw new StartRefused("The data were last used by a newer Tallywright (their version is " + version
                            + ", this one knows " + known + "); start that newer Tallywright again,"
                            + " or restore a backup file of this version into a new data folder.");
                });
    }

    /** The newest version that this build can migrate to. */
    public static MigrationVersion newestKnown(Flyway flyway) {
        return Arrays.stream(flyway.info().all())
                .filter(migration ->
                        migration.getVersion() != null && migration.getState().isResolved())
                .map(MigrationInfo::getVersion)
                .max(MigrationVersion::compareTo)
                .orElse(MigrationVersion.EMPTY);
    }
}
