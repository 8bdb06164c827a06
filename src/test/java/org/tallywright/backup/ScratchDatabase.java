package org.tallywright.backup;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.tallywright.TestDatabase;
import org.tallywright.TestServer;

/** A database of its own on the test server, owned by a role that is no superuser, with the application's tables. */
record ScratchDatabase(String name) {
    private static final String OWNER = "shop_keeper";
    private static final String PASSWORD = "keeper";

    static ScratchDatabase make(String name) throws SQLException {
        TestServer server = TestDatabase.server();
        server.createDatabase(name);
        try (Connection connection = server.open("postgres");
                var statement = connection.createStatement()) {
            statement.execute("do $$ begin create role " + OWNER + " login password '" + PASSWORD
                    + "'; exception when duplicate_object then null; end $$");
            statement.execute("alter database " + name + " owner to " + OWNER);
        }
        return new ScratchDatabase(name);
    }

    /** A copy of this one, which nobody may be connected to. */
    ScratchDatabase copy(String copyName) throws SQLException {
        TestServer server = TestDatabase.server();
        server.copyDatabase(name, copyName);
        try (Connection connection = server.open("postgres");
                var statement = connection.createStatement()) {
            statement.execute("alter database " + copyName + " owner to " + OWNER);
        }
        return new ScratchDatabase(copyName);
    }

    ScratchDatabase migrated() {
        flyway().migrate();
        return this;
    }

    Flyway flyway() {
        return Flyway.configure()
                .dataSource(source())
                .locations("classpath:db/migration", "classpath:db/view")
                .load();
    }

    DataSource source() {
        return new DriverManagerDataSource(TestDatabase.server().url(name), OWNER, PASSWORD);
    }

    Connection open() throws SQLException {
        return DriverManager.getConnection(TestDatabase.server().url(name), OWNER, PASSWORD);
    }

    void run(String... statements) throws SQLException {
        try (Connection connection = open();
                var statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    String one(String sql) throws SQLException {
        try (Connection connection = open();
                ResultSet row = connection.createStatement().executeQuery(sql)) {
            row.next();
            return String.valueOf(row.getString(1));
        }
    }

    /** Rows and a hash of all values for each table, made by the database and not by the code under test. */
    Map<String, String> fingerprint() throws SQLException {
        Map<String, String> prints = new TreeMap<>();
        try (Connection connection = open();
                ResultSet tables = connection
                        .createStatement()
                        .executeQuery("select quote_ident(tablename) from pg_tables where schemaname = 'public'"
                                + " and tablename <> 'flyway_schema_history'")) {
            while (tables.next()) {
                String table = tables.getString(1);
                prints.put(
                        table,
                        one("select count(*) || ' ' || coalesce(md5(string_agg(t::text, '|' order by t::text"
                                + " collate \"C\")), '') from " + table + " t"));
            }
        }
        return prints;
    }
}
