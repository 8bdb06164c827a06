package org.tallywright.demo;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;

/** One file of the scenario, from {@code db/demo} on the class path; each row by the names in the heading. */
final class DemoFile {
    private static final CSVFormat WITH_HEADINGS =
            CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();

    private DemoFile() {}

    static List<DemoRow> rows(String name) {
        String path = "/db/demo/" + name + ".csv";
        try (Reader reader = new InputStreamReader(
                        Objects.requireNonNull(DemoFile.class.getResourceAsStream(path), path),
                        StandardCharsets.UTF_8);
                CSVParser parser = WITH_HEADINGS.parse(reader)) {
            return parser.getRecords().stream()
                    .map(record -> new DemoRow(record.toMap()))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
    }
}
