package org.tallywright.db;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.tallywright.server.StartRefused;

/** Clears what an earlier run that was killed left in our way. Only to be called while the folder lock is held. */
final class Leftover {
    private static final Logger log = LoggerFactory.getLogger(Leftover.class);
    private static final int PATIENCE_SECONDS = 30;

    private Leftover() {}

    /**
     * Stops a server that outlived its application. A note of a dead process stays: PostgreSQL removes it itself, after
     * a look at the shared memory that it names. Only one whose number a stranger bears by now would stop it.
     */
    static void clear(Path data) throws IOException, InterruptedException {
        PidFile note = PidFile.of(data);
        ProcessHandle process = note.process().orElse(null);
        if (process == null) {
            return;
        }
        if (note.isServer(process)) {
            log.warn("Stopping the database server {} of a run that was killed", process.pid());
            stop(process);
        } else {
            Files.delete(note.file());
        }
    }

    private static void stop(ProcessHandle server) throws InterruptedException {
        interrupt(server);
        try {
            server.onExit().get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException | ExecutionException e) {
            throw new StartRefused(
                    "The database server of an earlier run (process " + server.pid()
                            + ") does not stop; stop it and start again.",
                    e);
        }
    }

    /** INT is PostgreSQL's fast shutdown: it lets nobody wait. The portable signal waits for clients to leave. */
    private static void interrupt(ProcessHandle server) throws InterruptedException {
        try {
            Process kill = new ProcessBuilder("kill", "-INT", Long.toString(server.pid())).start();
            if (kill.waitFor(5, TimeUnit.SECONDS) && kill.exitValue() == 0) {
                return;
            }
        } catch (IOException noSuchCommand) {
            log.debug("no kill command here", noSuchCommand);
        }
        server.destroy();
    }
}
