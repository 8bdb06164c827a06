package org.tallywright.catalog;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** One file of the starting catalogue, from {@code db/catalog} on the class path. */
final class SeedFile {
    private static final CSVFormat WITH_HEADINGS =
            CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();

    private SeedFile() {}

    static List<CSVRecord> rows(String name) {
        String path = "/db/catalog/" + name + ".csv";
        try (Reader reader = new InputStreamReader(
                        Objects.requireNonNull(SeedFile.class.getResourceAsStream(path), path),
                        StandardCharsets.UTF_8);
                CSVParser parser = WITH_HEADINGS.parse(reader)) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
    }
}
