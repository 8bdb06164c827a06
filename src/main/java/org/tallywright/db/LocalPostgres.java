package org.tallywright.db;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Base64;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.tallywright.server.DataFolder;
import org.tallywright.server.PrivateFiles;
import org.tallywright.server.StartRefused;

/** A real PostgreSQL server as a child process on this machine's loopback, its data kept in a folder. */
final class LocalPostgres implements AutoCloseable {
    /** Owner of the shop's database; no superuser, as on a hosted server. */
    static final String USER = "tallywright";

    private static final String DATABASE = "tallywright";
    private static final Logger log = LoggerFactory.getLogger(LocalPostgres.class);

    private final Cluster cluster;
    private final FolderLock lock;
    private @Nullable EmbeddedPostgres server;
    private String password = "";

    private LocalPostgres(Cluster cluster, FolderLock lock) {
        this.cluster = cluster;
        this.lock = lock;
    }

    /**
     * Starts the server, on a free port where {@code port} is 0.
     *
     * @throws StartRefused where the folder is unwritable, in use, of another major version, or the server fails
     */
    static LocalPostgres start(DataFolder folder, int port) throws IOException {
        LocalPostgres postgres = new LocalPostgres(new Cluster(folder), FolderLock.hold(folder));
        try {
            postgres.run(port);
            return postgres;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            postgres.close();
            throw new StartRefused("The start was interrupted.", e);
        } catch (IOException | SQLException | RuntimeException e) {
            postgres.close();
            throw e instanceof StartRefused refused ? refused : postgres.failed(e);
        }
    }

    private void run(int port) throws IOException, SQLException, InterruptedException {
        cluster.refuseOtherMajor();
        Leftover.clear(cluster.data());
        cluster.moveAsideUnfinished();
        cluster.removeHalfUnpackedBinaries();
        boolean first = !cluster.complete();
        password = first ? newPassword() : keptPassword();
        server = settings(port).start();
        // The library lets everybody write there, and who can do that can swap the server.
        PrivateFiles.folder(cluster.binaries());
        if (first) {
            setUp();
            cluster.markComplete();
        }
        log.debug("PostgreSQL runs on port {}", server.getPort());
    }

    private EmbeddedPostgres.Builder settings(int port) throws IOException {
        EmbeddedPostgres.Builder builder = EmbeddedPostgres.builder()
                .setDataDirectory(cluster.data())
                .setCleanDataDirectory(false)
                .setOverrideWorkingDirectory(cluster.binaries().toFile())
                // The bean is closed after the connection pool; a hook would run beside it.
                .setRegisterShutdownHook(false)
                .setPGStartupWait(Duration.ofSeconds(60))
                .setConnectConfig("password", password)
                .setDataDirectoryCustomizer(data -> admitByPasswordOnly())
                .setOutputRedirector(Redirect.appendTo(freshLog()))
                .setErrorRedirector(Redirect.appendTo(freshLog()));
        if (port != 0) {
            builder.setPort(port);
        }
        initdbOptions(builder);
        ServerSettings.ALL.forEach(builder::setServerConfig);
        return builder;
    }

    /** The library hands each of these to initdb as an option; so no moment passes without a password. */
    private void initdbOptions(EmbeddedPostgres.Builder builder) {
        builder.setLocaleConfig("pwfile", cluster.passwordFile().toString());
        builder.setLocaleConfig("auth", "scram-sha-256");
        if (System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("linux")) {
            builder.setLocaleConfig("locale", "C.UTF-8");
        }
    }

    private void admitByPasswordOnly() {
        try {
            Files.writeString(cluster.data().resolve("pg_hba.conf"), "host all all 127.0.0.1/32 scram-sha-256\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String newPassword() throws IOException {
        byte[] random = new byte[24];
        new SecureRandom().nextBytes(random);
        String made = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
        PrivateFiles.write(cluster.passwordFile(), made);
        return made;
    }

    private String keptPassword() throws IOException {
        if (!Files.isReadable(cluster.passwordFile())) {
            throw new StartRefused("The file " + cluster.passwordFile() + " is missing or cannot be read;"
                    + " without it the database of this folder stays closed.");
        }
        return Files.readString(cluster.passwordFile()).strip();
    }

    private void setUp() throws SQLException {
        try (Connection connection = DriverManager.getConnection(url("postgres"), "postgres", password);
                Statement statement = connection.createStatement()) {
            // The password holds letters, digits, - and _ only.
            statement.execute("create role " + USER + " login password '" + password + "'");
            statement.execute("create database " + DATABASE + " owner " + USER + " template template0 encoding 'UTF8'"
                    + " locale_provider builtin builtin_locale 'C.UTF-8' locale 'C.UTF-8'");
            statement.execute("checkpoint");
        }
    }

    /** Starts the server's log anew when it has grown; the one before is kept. */
    private File freshLog() throws IOException {
        long limit = 1_000_000;
        if (Files.exists(cluster.log()) && Files.size(cluster.log()) > limit) {
            Files.move(
                    cluster.log(), cluster.folder().resolve("postgres.log.old"), StandardCopyOption.REPLACE_EXISTING);
        }
        return cluster.log().toFile();
    }

    private StartRefused failed(Exception cause) {
        return new StartRefused(
                "The database server in " + cluster.folder().path() + " did not start; the end of " + cluster.log()
                        + " says why.",
                cause);
    }

    String url() {
        return url(DATABASE);
    }

    private String url(String database) {
        if (server == null) {
            throw new IllegalStateException("not started");
        }
        return "jdbc:postgresql://127.0.0.1:" + server.getPort() + "/" + database;
    }

    String password() {
        return password;
    }

    /** Stops the server, then lets go of the folder. */
    @Override
    public void close() throws IOException {
        try (lock) {
            if (server != null) {
                server.close();
            }
        }
    }
}
