package org.tallywright.books;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/** A download of rows (RFC 4180, UTF-8). Text that a spreadsheet would take for a formula gets an apostrophe in front. */
final class CsvFile {
    private CsvFile() {}

    static ResponseEntity<String> of(String name, List<String> headings, List<Object[]> rows) {
        StringBuilder text = new StringBuilder();
        try {
            write(text, headings, rows);
        } catch (IOException impossible) {
            throw new UncheckedIOException("a StringBuilder takes every character", impossible);
        }
        return ResponseEntity.ok()
                .contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .body(text.toString());
    }

    static void write(Appendable out, List<String> headings, List<Object[]> rows) throws IOException {
        CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord(headings);
        for (Object[] row : rows) {
            for (Object cell : row) {
                printer.print(plain(cell));
            }
            printer.println();
        }
    }

    private static @Nullable Object plain(@Nullable Object cell) {
        if (cell instanceof BigDecimal number) {
            return number.toPlainString();
        }
        boolean formula = cell instanceof String text && !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
        return formula ? "'" + cell : cell;
    }
}
