package org.tallywright.db;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** PostgreSQL's note of the server process that works on a data directory. */
record PidFile(Path file) {
    static PidFile of(Path data) {
        return new PidFile(data.resolve("postmaster.pid"));
    }

    /** The live process of the number noted, whatever it is; a crash may leave a number that others use by now. */
    Optional<ProcessHandle> process() throws IOException {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(file);
        return lines.isEmpty() ? Optional.empty() : handle(lines.get(0).strip());
    }

    private static Optional<ProcessHandle> handle(String number) {
        // Negative where the server ran without the postmaster.
        return number.matches("-?\\d{1,18}")
                ? ProcessHandle.of(Math.abs(Long.parseLong(number))).filter(ProcessHandle::isAlive)
                : Optional.empty();
    }

    /** Is that process a PostgreSQL server on this very directory? Where the system tells nothing, the user decides. */
    boolean isServer(ProcessHandle process) {
        ProcessHandle.Info info = process.info();
        if (info.command().isEmpty()) {
            return info.user().equals(ProcessHandle.current().info().user());
        }
        return isPostgres(info.command().get())
                && info.arguments().map(this::namesOurData).orElse(true);
    }

    private static boolean isPostgres(String command) {
        return Path.of(command).getFileName().toString().startsWith("postgres");
    }

    private boolean namesOurData(String[] arguments) {
        String data = String.valueOf(file.getParent());
        return Arrays.stream(arguments).anyMatch(argument -> argument.equals(data) || argument.equals("-D" + data));
    }
}
