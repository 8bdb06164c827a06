package org.tallywright.calibration;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.tallywright.shared.Refused;

/**
 * A file of past work as it was given: headings and cells, nothing read yet. The separator is the one of comma, semicolon and
 * tab that the first line has most of.
 */
public record PastFile(List<String> headings, List<List<String>> rows) {
    private static final int MOST_ROWS = 5000;

    /** @throws Refused where it is no table with headings and at least one row */
    public static PastFile of(String text) {
        String clean = text.startsWith("\uFEFF") ? text.substring(1) : text;
        if (clean.isBlank()) {
            throw new Refused("text", "Paste the rows here, or choose a file.");
        }
        String first = clean.strip().lines().findFirst().orElse("");
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator(first))
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get()
                .parse(new StringReader(clean))) {
            return of(parser.getRecords());
        } catch (IOException | UncheckedIOException e) {
            throw new Refused(
                    "text", "This cannot be read as rows and columns; look for a quotation mark that does not end.");
        }
    }

    private static PastFile of(List<CSVRecord> records) {
        if (records.size() < 2) {
            throw new Refused("text", "The first row holds the headings; there must be one more at least.");
        }
        if (records.size() > MOST_ROWS + 1) {
            throw new Refused(
                    "text", "At most " + MOST_ROWS + " rows at a time; this has " + (records.size() - 1) + ".");
        }
        List<List<String>> rows = new ArrayList<>();
        records.subList(1, records.size()).forEach(record -> rows.add(record.toList()));
        return new PastFile(records.get(0).toList(), rows);
    }

    private static char separator(String line) {
        return Arrays.asList(',', ';', '\t').stream()
                .max((a, b) -> Long.compare(count(line, a), count(line, b)))
                .orElse(',');
    }

    private static long count(String line, char c) {
        return line.chars().filter(each -> each == c).count();
    }
}
