package org.tallywright.shared;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * Figures from outside the project, one CSV file for each subject beside the tests. Every row names its source and how
 * its figure was got; "computed here" and "from memory" are weaker than "read in stored copy" and say so.
 */
public final class Checks {
    private static final Set<String> WAYS = Set.of(
            "read in stored copy",
            "inputs read in stored copy",
            "computed here",
            "from memory",
            "rule read in stored copy");

    private Checks() {}

    /** One row; shown as its first column and its source. */
    public record Row(CSVRecord csv) {
        public String text(String column) {
            return csv.get(column);
        }

        public BigDecimal number(String column) {
            return new BigDecimal(text(column));
        }

        @Override
        public String toString() {
            return csv.get(0) + ": " + text("source") + " (" + text("how_obtained") + ")";
        }
    }

    /** The rows of a file in this package. */
    public static List<Row> read(String file) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (InputStreamReader in = new InputStreamReader(
                Objects.requireNonNull(Checks.class.getResourceAsStream(file), file), StandardCharsets.UTF_8)) {
            List<Row> rows = format.parse(in).stream().map(Row::new).toList();
            if (rows.isEmpty()) {
                throw new IllegalStateException(file + " has no rows");
            }
            rows.forEach(Checks::nameItsSource);
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void nameItsSource(Row row) {
        if (row.text("source").isBlank() || WAYS.stream().noneMatch(row.text("how_obtained")::startsWith)) {
            throw new IllegalStateException(row + " does not say where its figure comes from");
        }
    }
}
