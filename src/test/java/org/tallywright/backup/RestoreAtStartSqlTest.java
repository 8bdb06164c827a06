package org.tallywright.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.DefaultApplicationArguments;
import org.tallywright.TestClock;
import org.tallywright.server.StartRefused;

class RestoreAtStartSqlTest {
    /** A version of the tables that a shop may still have; views and later tables are not there yet. */
    private static final String OLDER = "003";

    @TempDir
    Path folder;

    @Test
    void bringsAFileOfAnOlderVersionUpToDate() throws Exception {
        ScratchDatabase old = ScratchDatabase.make("restore_old");
        Flyway.configure()
                .dataSource(old.source())
                .locations("classpath:db/migration")
                .target(OLDER)
                .load()
                .migrate();
        addPerson(old);
        ScratchDatabase database = ScratchDatabase.make("restore_new");
        start(database, backup(old));
        database.migrated();
        assertThat(database.one("select name from person")).isEqualTo("Ada");
        assertThat(database.flyway().info().current().getVersion().getVersion()).isGreaterThan(OLDER);
        assertThat(database.flyway().info().pending()).isEmpty();
    }

    @Test
    void fillsAShopThatWasStartedButNotSetUp() throws Exception {
        ScratchDatabase source = ScratchDatabase.make("restore_old").migrated();
        addPerson(source);
        ScratchDatabase database = ScratchDatabase.make("restore_new").migrated();
        start(database, backup(source));
        assertThat(database.one("select name from person")).isEqualTo("Ada");
    }

    @Test
    void refusesAUsedShopAndAMissingFile() throws Exception {
        ScratchDatabase source = ScratchDatabase.make("restore_old").migrated();
        addPerson(source);
        Path file = backup(source);
        assertThatThrownBy(() -> start(source, file))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("not empty");
        assertThatThrownBy(() -> start(source, folder.resolve("none.zip")))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("no backup file");
    }

    private static void start(ScratchDatabase database, Path file) {
        new RestoreAtStart(new DefaultApplicationArguments("--restore=" + file)).prepare(database.flyway());
    }

    private static void addPerson(ScratchDatabase database) throws Exception {
        database.run(
                "begin",
                "set local tallywright.person = 'shop'",
                "set local tallywright.at = '2026-11-25T18:40:00Z'",
                "insert into person (id, name, role, active, created_at, version) values (uuidv7(), 'Ada', 'owner', true,"
                        + " '2026-11-25T18:40:00Z', 0)",
                "commit");
    }

    private Path backup(ScratchDatabase database) throws Exception {
        Path file = folder.resolve("shop.zip");
        try (var out = Files.newOutputStream(file)) {
            new Backup(database.source(), new TestClock()).write(out);
        }
        return file;
    }
}
