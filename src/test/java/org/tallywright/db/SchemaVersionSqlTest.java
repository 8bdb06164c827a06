package org.tallywright.db;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.SQLException;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.tallywright.TestDatabase;
import org.tallywright.TestServer;
import org.tallywright.server.StartRefused;

class SchemaVersionSqlTest {
    private static final String NAME = "schema_version";

    Flyway flyway;

    @BeforeEach
    void makeAnEmptyDatabase() {
        TestServer server = TestDatabase.server();
        server.createDatabase(NAME);
        flyway = Flyway.configure()
                .dataSource(server.url(NAME), server.user(), server.password())
                .locations("classpath:db/migration", "classpath:db/view")
                .load();
    }

    @Test
    void acceptsANewDatabaseAndOneOfItsOwnVersion() {
        SchemaVersion.refuseNewer(flyway);
        flyway.migrate();
        SchemaVersion.refuseNewer(flyway);
        assertThat(flyway.info().current().getVersion()).isEqualTo(SchemaVersion.newestKnown(flyway));
    }

    @Test
    void refusesTablesOfANewerBuildAndNamesBothVersions() throws SQLException {
        flyway.migrate();
        String known = SchemaVersion.newestKnown(flyway).getVersion();
        try (var connection = TestDatabase.server().open(NAME);
                var statement = connection.createStatement()) {
            statement.execute("insert into flyway_schema_history select 9999, '9999', 'of a newer build', type, script,"
                    + " checksum, installed_by, installed_on, execution_time, success from flyway_schema_history"
                    + " where version = '" + known + "'");
        }
        assertThatThrownBy(() -> SchemaVersion.refuseNewer(flyway))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("newer Tallywright (their version is 9999, this one knows " + known + ")");
    }
}
