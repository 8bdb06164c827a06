package org.tallywright.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;
import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Component;
import org.tallywright.db.BeforeFirstUse;
import org.tallywright.db.SchemaVersion;
import org.tallywright.server.StartRefused;

/**
 * {@code --restore=FILE} on the command line: fills an empty shop before anything else looks at it, then starts as
 * usual. A file of an older version goes into tables of that version, which are then brought up to date.
 */
@Component
class RestoreAtStart implements BeforeFirstUse {
    private final List<String> files;

    RestoreAtStart(ApplicationArguments arguments) {
        List<String> values = arguments.getOptionValues("restore");
        files = values == null ? List.of() : values;
    }

    @Override
    public void prepare(Flyway flyway) {
        for (String file : files) {
            try {
                restore(flyway, Path.of(file).toAbsolutePath());
            } catch (RestoreRefused e) {
                throw new StartRefused(String.valueOf(e.getMessage()), e);
            }
        }
    }

    private static void restore(Flyway flyway, Path path) {
        migrateTo(flyway, versionOf(path));
        Manifest restored = new Restore(flyway.getConfiguration().getDataSource()).intoEmptyShop(path);
        System.out.printf(
                "Restored %d rows in %d tables from %s, made at %s%n",
                restored.rows(), restored.tables().size(), path, restored.madeAt());
    }

    private static MigrationVersion versionOf(Path path) {
        try (BackupFile file = BackupFile.open(path)) {
            return MigrationVersion.fromVersion(file.manifest().schemaVersion());
        } catch (IOException e) {
            throw new RestoreRefused("The backup file " + path + " cannot be read.", e);
        }
    }

    private static void migrateTo(Flyway flyway, MigrationVersion version) {
        MigrationVersion known = SchemaVersion.newestKnown(flyway);
        if (version.isNewerThan(known)) {
            throw new RestoreRefused("The backup file was made by a newer Tallywright (its version is " + version
                    + ", this one knows " + known + "); restore it with that newer one.");
        }
        refuseUsedShop(flyway);
        if (version.equals(known)) {
            flyway.migrate();
        } else if (flyway.info().current() == null) {
            // Views are left for later: they may ask for columns that this version does not have yet.
            Flyway.configure()
                    .configuration(flyway.getConfiguration())
                    .locations("classpath:db/migration")
                    .target(version)
                    .load()
                    .migrate();
        }
    }

    /** Asked before anything is migrated, so that a wrong command changes nothing. */
    private static void refuseUsedShop(Flyway flyway) {
        try (Connection connection = flyway.getConfiguration().getDataSource().getConnection()) {
            if (!new Catalog(connection).shopIsEmpty()) {
                throw RestoreRefused.notEmpty();
            }
        } catch (SQLException e) {
            throw new RestoreRefused("The database could not be read.", e);
        }
    }
}
