package org.tallywright.db;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tallywright.server.DataFolder;
import org.tallywright.server.StartRefused;

class FolderLockTest {
    @TempDir
    Path temp;

    @Test
    void isHeldByOneAtATime() throws IOException {
        DataFolder folder = DataFolder.prepare(temp.resolve("shop"));
        try (FolderLock held = FolderLock.hold(folder)) {
            assertThatThrownBy(() -> FolderLock.hold(folder))
                    .isInstanceOf(StartRefused.class)
                    .hasMessageContaining(folder.path() + " is in use by another Tallywright");
        }
        try (FolderLock again = FolderLock.hold(folder)) {
            assertThat(again).isNotNull();
        }
    }

    @Test
    void leavesOtherFoldersFree() throws IOException {
        try (FolderLock one = FolderLock.hold(DataFolder.prepare(temp.resolve("one")));
                FolderLock two = FolderLock.hold(DataFolder.prepare(temp.resolve("two")))) {
            assertThat(one).isNotSameAs(two);
        }
    }
}
