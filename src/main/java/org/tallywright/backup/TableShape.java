package org.tallywright.backup;

import java.util.List;

/**
 * A table as far as copying needs it. Generated columns are left out: the database computes them again.
 *
 * @param name its plain name
 * @param quoted its name as SQL takes it
 * @param columns plain names, in the order of the table
 * @param quotedColumns the same as SQL takes them, separated by commas
 * @param order an ORDER BY list that depends on the values alone, so that equal tables give equal files
 */
record TableShape(String name, String quoted, List<String> columns, String quotedColumns, String order) {
    String copyOut() {
        // Quotes everywhere keep an empty text apart from none.
        return "copy (select " + quotedColumns + " from " + quoted + " order by " + order
                + ") to stdout (format csv, header, force_quote *, encoding 'UTF8')";
    }

    String copyIn() {
        return "copy " + quoted + " (" + quotedColumns + ") from stdin (format csv, header match, encoding 'UTF8')";
    }
}
