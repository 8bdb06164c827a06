package org.tallywright.backup;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** A backup file opened for reading, its manifest read and understood. */
final class BackupFile implements AutoCloseable {
    private final Path path;
    private final ZipFile zip;
    private final Manifest manifest;

    private BackupFile(Path path, ZipFile zip, Manifest manifest) {
        this.path = path;
        this.zip = zip;
        this.manifest = manifest;
    }

    static BackupFile open(Path path) {
        if (!Files.isReadable(path) || Files.isDirectory(path)) {
            throw new RestoreRefused("There is no backup file " + path + " that can be read.");
        }
        try {
            ZipFile zip = new ZipFile(path.toFile());
            try {
                return new BackupFile(path, zip, read(path, zip));
            } catch (RuntimeException | IOException e) {
                zip.close();
                throw e;
            }
        } catch (IOException e) {
            throw damaged(path, e);
        }
    }

    private static Manifest read(Path path, ZipFile zip) throws IOException {
        ZipEntry entry = zip.getEntry(Manifest.ENTRY);
        if (entry == null) {
            throw new RestoreRefused("The file " + path + " is not a backup file of Tallywright.");
        }
        try (InputStream in = zip.getInputStream(entry)) {
            Manifest manifest = JsonMapper.builder().build().readValue(in.readAllBytes(), Manifest.class);
            if (manifest.format() != Manifest.FORMAT) {
                throw new RestoreRefused("The backup file " + path + " has layout " + manifest.format()
                        + ", and this Tallywright reads layout " + Manifest.FORMAT + ".");
            }
            return manifest;
        } catch (JacksonException e) {
            throw damaged(path, e);
        }
    }

    Manifest manifest() {
        return manifest;
    }

    InputStream csv(Manifest.Table table) throws IOException {
        ZipEntry entry = zip.getEntry(table.entry());
        if (entry == null) {
            throw damaged(null);
        }
        return zip.getInputStream(entry);
    }

    RestoreRefused damaged(@Nullable Exception cause) {
        return damaged(path, cause);
    }

    private static RestoreRefused damaged(Path path, @Nullable Exception cause) {
        return new RestoreRefused("The backup file " + path + " is damaged; nothing was restored from it.", cause);
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
