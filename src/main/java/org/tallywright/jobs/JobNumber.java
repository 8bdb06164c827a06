package org.tallywright.jobs;

import java.util.Locale;

/** The number of a job as written on the drawing: {@code 26-014}, the year of opening and a sequence in that year. */
public record JobNumber(int year, int sequence) {
    public JobNumber {
        if (year < 2000 || year > 2199 || sequence < 1 || sequence > 9999) {
            throw new IllegalArgumentException("no job number: " + year + ", " + sequence);
        }
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%02d-%03d", year % 100, sequence);
    }
}
