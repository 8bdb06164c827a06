package org.tallywright;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * One PostgreSQL server for the tests of this JVM, the kind chosen by the system property {@code test.db} or the
 * environment variable {@code TEST_DB}.
 *
 * <ul>
 *   <li>{@code auto} (the default): a container where a Docker engine answers and has or can get the image, else the
 *       embedded server. Never a skip.
 *   <li>{@code container}: a container; the tests fail where none can be had.
 *   <li>{@code embedded}: the embedded server of the same major version.
 * </ul>
 *
 * The choice is printed once, on a line that starts with {@code Test database:}.
 */
public record TestServer(String kind, String host, int port, String user, String password) {
    static final String IMAGE = "postgres:18-alpine";

    static TestServer pick() {
        long start = System.nanoTime();
        TestServer server = start(mode());
        System.out.printf(
                "Test database: %s, started in %d ms%n", server.kind(), (System.nanoTime() - start) / 1_000_000);
        return server;
    }

    private static String mode() {
        String fromEnvironment = System.getenv().getOrDefault("TEST_DB", "auto");
        return System.getProperty("test.db", fromEnvironment.isBlank() ? "auto" : fromEnvironment);
    }

    private static TestServer start(String mode) {
        return switch (mode) {
            case "container" -> container();
            case "embedded" -> embedded();
            case "auto" -> containerOrEmbedded();
            default -> throw new IllegalArgumentException("test.db must be auto, container or embedded, not " + mode);
        };
    }

    private static TestServer containerOrEmbedded() {
        String missing = DockerEngine.missing(IMAGE);
        if (missing.isEmpty()) {
            try {
                return container();
            } catch (RuntimeException e) {
                missing = e.getMessage();
            }
        }
        System.out.println("Test database: no container (" + missing + "), so the embedded server");
        return embedded();
    }

    private static TestServer container() {
        // Stopped by the hook when the JVM ends: the server outlives every cached context on purpose.
        PostgreSQLContainer container = new PostgreSQLContainer(IMAGE).withStartupTimeout(Duration.ofSeconds(60));
        container.setCommand("postgres", "-c", "fsync=off", "-c", "max_connections=100");
        container.start();
        Runtime.getRuntime().addShutdownHook(new Thread(container::stop));
        return new TestServer(
                "container " + IMAGE,
                container.getHost(),
                container.getMappedPort(PostgreSQLContainer.POSTGRESQL_PORT),
                container.getUsername(),
                container.getPassword());
    }

    private static TestServer embedded() {
        try {
            EmbeddedPostgres server = EmbeddedPostgres.builder()
                    .setOverrideWorkingDirectory(Path.of("target", "postgres").toFile())
                    .setPGStartupWait(Duration.ofSeconds(60))
                    .setLocaleConfig("locale", "C.UTF-8")
                    .setServerConfig("max_connections", "100")
                    .start();
            return new TestServer("embedded", "127.0.0.1", server.getPort(), "postgres", "postgres");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public String url(String database) {
        return "jdbc:postgresql://" + host + ":" + port + "/" + database;
    }

    /** A connection to a database of this server, as superuser. */
    public Connection open(String database) throws SQLException {
        return DriverManager.getConnection(url(database), user, password);
    }

    /** An empty database with the collation that the application uses; one of that name is dropped first. */
    public void createDatabase(String name) {
        create(
                name,
                "template template0 encoding 'UTF8' locale_provider builtin builtin_locale 'C.UTF-8' locale 'C.UTF-8'");
    }

    /** A copy of a database that nobody is connected to; far quicker than migrating anew. */
    public void copyDatabase(String original, String name) {
        create(name, "template " + original);
    }

    private void create(String name, String options) {
        try (Connection connection = open("postgres");
                var statement = connection.createStatement()) {
            statement.execute("drop database if exists " + name + " with (force)");
            statement.execute("create database " + name + " " + options);
        } catch (SQLException e) {
            throw new IllegalStateException("cannot create the test database " + name, e);
        }
    }
}
