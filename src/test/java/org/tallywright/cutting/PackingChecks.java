package org.tallywright.cutting;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** The published packing instances with their optima; each row of the optima names its source. */
final class PackingChecks {
    private PackingChecks() {}

    static Map<String, List<CSVRecord>> instances(String file) {
        Map<String, List<CSVRecord>> byName = new LinkedHashMap<>();
        rows(file)
                .forEach(row -> byName.computeIfAbsent(row.get("instance"), n -> new ArrayList<>())
                        .add(row));
        return byName;
    }

    static List<CSVRecord> rows(String file) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader =
                new InputStreamReader(PackingChecks.class.getResourceAsStream(file), StandardCharsets.UTF_8)) {
            return format.parse(reader).getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static long number(CSVRecord row, String column) {
        return Long.parseLong(row.get(column));
    }
}
