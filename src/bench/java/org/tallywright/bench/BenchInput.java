package org.tallywright.bench;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where a benchmark reads and writes.
 *
 * @param data value of -Dbench.data, blank where none was given
 * @param out directory for the results
 */
public record BenchInput(String data, Path out) {

    /** The data file, or a plain complaint. */
    public Path dataFile() {
        Path file = Path.of(data);
        if (data.isBlank() || !Files.isReadable(file)) {
            throw new IllegalArgumentException("give a readable file with -Dbench.data=FILE.csv, not '" + data + "'");
        }
        return file;
    }
}
