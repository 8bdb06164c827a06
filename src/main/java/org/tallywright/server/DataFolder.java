package org.tallywright.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The folder in which everything of one shop is kept; readable to its owner alone. */
public record DataFolder(Path path) {
    /** Its presence also tells that the folder is ours. */
    private static final String LOCK = "tallywright.lock";

    /**
     * Makes the folder where it is missing.
     *
     * @throws StartRefused where it cannot be written, or holds files of something else (it would be closed to others)
     */
    public static DataFolder prepare(Path path) {
        DataFolder folder = new DataFolder(path.toAbsolutePath().normalize());
        try {
            folder.refuseForeign();
            // Asked before its mode is set: an owner who closed it to himself meant it.
            if (Files.exists(folder.path) && !Files.isWritable(folder.path)) {
                throw folder.unwritable(null);
            }
            PrivateFiles.folder(folder.path);
            if (!Files.exists(folder.lockFile())) {
                PrivateFiles.write(folder.lockFile(), "");
            }
            if (!Files.isWritable(folder.lockFile())) {
                throw folder.unwritable(null);
            }
        } catch (IOException e) {
            throw folder.unwritable(e);
        }
        return folder;
    }

    public Path lockFile() {
        return path.resolve(LOCK);
    }

    public Path resolve(String name) {
        return path.resolve(name);
    }

    private StartRefused unwritable(@Nullable IOException cause) {
        return new StartRefused(
                "The data folder " + path + " cannot be written; give this user write access to it,"
                        + " or set TALLYWRIGHT_DATA to another folder.",
                cause);
    }

    private void refuseForeign() throws IOException {
        if (!Files.isDirectory(path) || Files.exists(lockFile())) {
            return;
        }
        try (Stream<Path> content = Files.list(path)) {
            if (content.findAny().isPresent()) {
                throw new StartRefused("The data folder " + path + " holds files that are not Tallywright's;"
                        + " set TALLYWRIGHT_DATA to a folder of its own.");
            }
        }
    }
}
