package org.tallywright.db;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LeftoverTest {
    /** Above the largest number that Linux, macOS or Windows in practice give out. */
    private static final String NO_PROCESS = "999999999999";

    @TempDir
    Path data;

    @Test
    void doesNothingWithoutANote() throws Exception {
        Leftover.clear(data);
        assertThat(data).isEmptyDirectory();
    }

    @Test
    void leavesTheNoteOfADeadServerToPostgres() throws Exception {
        note(NO_PROCESS);
        Leftover.clear(data);
        assertThat(data.resolve("postmaster.pid")).exists();
    }

    @Test
    void removesANoteWhoseNumberAStrangerBears() throws Exception {
        note(Long.toString(ProcessHandle.current().pid()));
        Leftover.clear(data);
        assertThat(data.resolve("postmaster.pid")).doesNotExist();
    }

    @Test
    void takesNoOtherProgramForItsServer() {
        assertThat(PidFile.of(data).isServer(ProcessHandle.current())).isFalse();
    }

    @Test
    void readsTheNumberOfAServerRunAlone() throws IOException {
        note("-" + ProcessHandle.current().pid());
        assertThat(PidFile.of(data).process()).contains(ProcessHandle.current());
    }

    @Test
    void takesAnUnreadableNoteForNobody() throws IOException {
        note("");
        assertThat(PidFile.of(data).process()).isEmpty();
        note("what is this");
        assertThat(PidFile.of(data).process()).isEmpty();
        note("99999999999999999999999");
        assertThat(PidFile.of(data).process()).isEmpty();
    }

    private void note(String number) throws IOException {
        Files.writeString(data.resolve("postmaster.pid"), number + "\n" + data + "\n");
    }
}
