package org.tallywright.server;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Files and folders that nobody but their owner may read. On Windows the user's own folder gives that. */
public final class PrivateFiles {
    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    private PrivateFiles() {}

    /** A file, replaced if it is there, that is never readable to others, not even for a moment. */
    public static void write(Path file, String content) throws IOException {
        Files.deleteIfExists(file);
        Files.createFile(file, mode("rw-------"));
        Files.writeString(file, content);
    }

    /** A folder with its missing parents; one that exists is closed to others. */
    public static void folder(Path folder) throws IOException {
        Files.createDirectories(folder, mode("rwx------"));
        if (POSIX) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
    }

    private static FileAttribute<?>[] mode(String permissions) {
        return POSIX
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
                }
                : new FileAttribute<?>[0];
    }
}
