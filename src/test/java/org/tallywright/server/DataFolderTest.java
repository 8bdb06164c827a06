package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {
    @TempDir
    Path temp;

    @Test
    void isMadeForItsOwnerAlone() throws IOException {
        assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
        Path path = DataFolder.prepare(temp.resolve("a/b")).path();
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
                .isEqualTo("rwx------");
    }

    @Test
    void isClosedAgainWhereItWasOpened() throws IOException {
        assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
        Path path = DataFolder.prepare(temp.resolve("shop")).path();
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwxrwxrwx"));
        DataFolder.prepare(path);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
                .isEqualTo("rwx------");
    }

    @Test
    void refusesAFolderOfSomethingElse() throws IOException {
        Files.writeString(temp.resolve("letter.txt"), "to a client");
        assertThatThrownBy(() -> DataFolder.prepare(temp))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("not Tallywright's");
    }

    @Test
    void refusesAPlaceThatCannotBeWritten() throws IOException {
        Path file = Files.writeString(temp.resolve("file"), "in the way");
        assertThatThrownBy(() -> DataFolder.prepare(file.resolve("shop")))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("cannot be written");
    }
}
