package org.tallywright.db;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tallywright.server.DataFolder;
import org.tallywright.server.StartRefused;

/** The server that comes along, in a folder of its own; no container takes its place here. */
class LocalPostgresSqlTest {
    @TempDir
    static Path temp;

    static DataFolder folder;

    /** Beside the server that runs: within one JVM the library unpacks its programs once, for all data folders. */
    static Path control;

    @BeforeAll
    static void firstStart() throws Exception {
        folder = DataFolder.prepare(temp.resolve("shop"));
        try (LocalPostgres postgres = LocalPostgres.start(folder, 0)) {
            one(postgres, "create table kept (words text); insert into kept values ('first start'); select 1");
            Path server = Path.of(
                    PidFile.of(data()).process().orElseThrow().info().command().orElseThrow());
            control = server.resolveSibling(server.getFileName().toString().replace("postgres", "pg_ctl"));
        }
    }

    @Test
    void writesThroughAndLetsNobodyInButByPassword() throws Exception {
        try (LocalPostgres postgres = LocalPostgres.start(folder, 0)) {
            assertThat(one(postgres, "show fsync")).isEqualTo("on");
            assertThat(one(postgres, "show synchronous_commit")).isEqualTo("on");
            assertThat(one(postgres, "show full_page_writes")).isEqualTo("on");
            assertThat(one(postgres, "show listen_addresses")).isEqualTo("127.0.0.1");
            assertThat(one(postgres, "select rolsuper from pg_roles where rolname = current_user"))
                    .isEqualTo("f");
            assertThatThrownBy(() -> DriverManager.getConnection(postgres.url(), LocalPostgres.USER, "guessed"))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining("password authentication failed");
            assertThatThrownBy(() -> DriverManager.getConnection(postgres.url(), "postgres", ""))
                    .isInstanceOf(SQLException.class);
        }
    }

    @Test
    void isRefusedToASecondUser() throws Exception {
        try (LocalPostgres postgres = LocalPostgres.start(folder, 0)) {
            assertThatThrownBy(() -> LocalPostgres.start(folder, 0))
                    .isInstanceOf(StartRefused.class)
                    .hasMessageContaining("in use by another Tallywright");
            assertThat(one(postgres, "select 'still there'")).isEqualTo("still there");
        }
    }

    @Test
    void stopsAServerThatOutlivedItsApplication() throws Exception {
        startServerOfNobody();
        ProcessHandle leftover = PidFile.of(data()).process().orElseThrow();
        try (LocalPostgres postgres = LocalPostgres.start(folder, 0)) {
            assertThat(leftover.isAlive()).isFalse();
            assertThat(one(postgres, "select words from kept")).isEqualTo("first start");
        }
    }

    @Test
    void recoversAfterApplicationAndServerWereKilled() throws Exception {
        startServerOfNobody();
        ProcessHandle server = PidFile.of(data()).process().orElseThrow();
        server.destroyForcibly();
        server.onExit().join();
        assertThat(data().resolve("postmaster.pid")).exists();
        try (LocalPostgres postgres = LocalPostgres.start(folder, 0)) {
            assertThat(one(postgres, "select words from kept")).isEqualTo("first start");
        }
    }

    private static Path data() {
        return new Cluster(folder).data();
    }

    /** Started as the library does it, by pg_ctl, but with nobody who holds the folder. */
    private static void startServerOfNobody() throws IOException, InterruptedException {
        try (ServerSocket free = new ServerSocket(0)) {
            int port = free.getLocalPort();
            free.close();
            List<String> command = new ArrayList<>();
            if (System.getProperty("user.name").equals("root")) {
                command.addAll(List.of("unshare", "-U"));
            }
            command.addAll(List.of(control.toString(), "-D", data().toString(), "-w", "-o"));
            command.add("-p " + port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=''");
            command.add("start");
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(Redirect.DISCARD)
                    .start();
            assertThat(process.waitFor()).isZero();
        }
    }

    private static String one(LocalPostgres postgres, String sql) throws SQLException {
        try (Connection connection =
                        DriverManager.getConnection(postgres.url(), LocalPostgres.USER, postgres.password());
                var statement = connection.createStatement()) {
            boolean rows = statement.execute(sql);
            while (!rows) {
                rows = statement.getMoreResults();
            }
            try (ResultSet row = statement.getResultSet()) {
                row.next();
                return row.getString(1);
            }
        }
    }
}
