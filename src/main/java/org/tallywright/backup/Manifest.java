package org.tallywright.backup;

import java.time.Instant;
import java.util.List;

/**
 * What a backup file says about itself ({@code manifest.json}).
 *
 * @param format the layout of the file; see {@link #FORMAT}
 * @param schemaVersion the migration up to which the tables had been brought
 * @param madeAt the instant of the snapshot
 */
public record Manifest(int format, String schemaVersion, Instant madeAt, List<Table> tables, List<Sequence> sequences) {
    static final int FORMAT = 1;
    static final String ENTRY = "manifest.json";

    /** @param sha256 of the table's CSV, as lower case hexadecimal digits */
    public record Table(String name, List<String> columns, long rows, String sha256) {
        String entry() {
            return "tables/" + name + ".csv";
        }
    }

    /** @param called whether {@code lastValue} has been given out; false before the first use */
    public record Sequence(String name, long lastValue, boolean called) {}

    public long rows() {
        return tables.stream().mapToLong(Table::rows).sum();
    }
}
