package org.tallywright.calibration.engine.model;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Reads figures restated from outside; each file in src/test/resources/calibration names its source in its first lines. */
public final class CheckFile {

    private CheckFile() {}

    public static List<CSVRecord> rows(String name) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = new InputStreamReader(
                CheckFile.class.getResourceAsStream("/calibration/" + name), StandardCharsets.UTF_8)) {
            return format.parse(reader).getRecords();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    public static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }
}
