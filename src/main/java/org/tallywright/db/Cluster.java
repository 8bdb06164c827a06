package org.tallywright.db;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.tallywright.server.DataFolder;
import org.tallywright.server.PrivateFiles;
import org.tallywright.server.StartRefused;

/** What lies in the data folder: the server's own files, its binaries, its password, and the mark of a finished set-up. */
record Cluster(DataFolder folder) {
    static final String MAJOR = "18";
    private static final Logger log = LoggerFactory.getLogger(Cluster.class);

    Path data() {
        return folder.resolve("pg" + MAJOR);
    }

    Path binaries() {
        return folder.resolve("bin");
    }

    Path passwordFile() {
        return folder.resolve("password");
    }

    Path log() {
        return folder.resolve("postgres.log");
    }

    /** Written last of all, so that its absence tells of a first start that broke off. */
    Path marker() {
        return folder.resolve("complete");
    }

    boolean complete() {
        return Files.exists(marker()) && Files.exists(data());
    }

    void markComplete() throws IOException {
        PrivateFiles.write(marker(), MAJOR + "\n");
    }

    /** The data of another major version cannot be read, and starting beside it would show an empty shop. */
    void refuseOtherMajor() throws IOException {
        Path version = data().resolve("PG_VERSION");
        if (Files.exists(version) && !Files.readString(version).strip().equals(MAJOR)) {
            throw otherMajor(Files.readString(version).strip());
        }
        if (Files.exists(data())) {
            return;
        }
        try (Stream<Path> entries = Files.list(folder.path())) {
            entries.map(entry -> entry.getFileName().toString())
                    .filter(name -> name.matches("pg\\d+"))
                    .findFirst()
                    .ifPresent(name -> {
                        throw otherMajor(name.substring(2));
                    });
        }
    }

    private StartRefused otherMajor(String found) {
        return new StartRefused("The data in " + folder.path() + " were written by PostgreSQL " + found
                + " and this Tallywright brings PostgreSQL " + MAJOR + "; make a backup file with the Tallywright"
                + " used before and restore it into a new data folder.");
    }

    /** A first start that was broken off left a cluster that nothing can be said about: put aside, never deleted. */
    void moveAsideUnfinished() throws IOException {
        if (!Files.exists(data()) || complete()) {
            return;
        }
        int number = 1;
        while (Files.exists(folder.resolve("unfinished-" + number))) {
            number++;
        }
        Path aside = folder.resolve("unfinished-" + number);
        Files.move(data(), aside);
        log.warn("A first start had broken off; what it left is now in {}", aside);
    }

    /** Binaries whose unpacking broke off lack the mark that the library sets at its end, and would be tripped over. */
    void removeHalfUnpackedBinaries() throws IOException {
        if (!Files.isDirectory(binaries())) {
            return;
        }
        try (Stream<Path> folders = Files.list(binaries())) {
            for (Path unpacked : folders.filter(Files::isDirectory).toList()) {
                if (!Files.exists(unpacked.resolve(".exists"))) {
                    deleteTree(unpacked);
                }
            }
        }
    }

    private static void deleteTree(Path root) throws IOException {
        try (Stream<Path> tree = Files.walk(root)) {
            for (Path entry : tree.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(entry);
            }
        }
    }
}
