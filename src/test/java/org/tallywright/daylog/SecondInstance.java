package org.tallywright.daylog;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** The application once more, as a process of its own on the same database, so that it can be killed. */
final class SecondInstance implements AutoCloseable {
    private static final String READY = "is ready at ";

    private final Process process;
    final String home;

    SecondInstance(JdbcConnectionDetails database, Path folder) throws IOException {
        // Test classes are left out: their components are not the application's.
        String classes = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !entry.endsWith("test-classes"))
                .collect(Collectors.joining(File.pathSeparator));
        ProcessBuilder command = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                classes,
                "org.tallywright.Application",
                "--server.port=0",
                "--tallywright.data=" + folder);
        command.environment().put("SPRING_DATASOURCE_URL", database.getJdbcUrl());
        command.environment().put("SPRING_DATASOURCE_USERNAME", database.getUsername());
        command.environment().put("SPRING_DATASOURCE_PASSWORD", database.getPassword());
        process = command.redirectErrorStream(true).start();
        home = awaitReady();
    }

    private String awaitReady() throws IOException {
        BufferedReader lines =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        List<String> before = new ArrayList<>();
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            before.add(line);
            int at = line.indexOf(READY);
            if (at >= 0) {
                drain(lines);
                return line.substring(at + READY.length()).strip();
            }
        }
        throw new IOException("the second instance did not start: " + before);
    }

    /** So that it never waits for somebody to read what it says. */
    private static void drain(BufferedReader lines) {
        Thread reader = new Thread(() -> lines.lines().forEach(line -> {}), "second-instance");
        reader.setDaemon(true);
        reader.start();
    }

    /** As by kill -9. */
    void kill() {
        process.destroyForcibly();
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
