package org.tallywright.db;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import org.tallywright.server.DataFolder;
import org.tallywright.server.StartRefused;

/**
 * Holds a data folder for the whole life of this process. The operating system lets go of it when the process ends in
 * whatever way; so a database server found in a folder that we hold was left behind by nobody who is still there.
 */
final class FolderLock implements AutoCloseable {
    private final FileChannel channel;

    private FolderLock(FileChannel channel) {
        this.channel = channel;
    }

    static FolderLock hold(DataFolder folder) throws IOException {
        FileChannel channel = FileChannel.open(folder.lockFile(), StandardOpenOption.WRITE);
        if (tryLock(channel) == null) {
            channel.close();
            throw new StartRefused("The data folder " + folder.path() + " is in use by another Tallywright;"
                    + " stop that one, or set TALLYWRIGHT_DATA to another folder.");
        }
        return new FolderLock(channel);
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException heldByThisProcess) {
            return null;
        }
    }

    /** Closing the channel releases the lock. */
    @Override
    public void close() throws IOException {
        channel.close();
    }
}
