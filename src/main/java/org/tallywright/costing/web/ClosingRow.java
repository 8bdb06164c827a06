package org.tallywright.costing.web;

import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.tallywright.costing.Reviews;

/** One closing of the job, in words. */
record ClosingRow(int closing, String on, String by, String lesson) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    static ClosingRow of(Reviews.Closed closed) {
        return new ClosingRow(closed.closing(), closed.closedOn().format(DAY), closed.closedBy(), closed.lesson());
    }
}
