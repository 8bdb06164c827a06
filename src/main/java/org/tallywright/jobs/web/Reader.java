package org.tallywright.jobs.web;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;

/** Reads what the forms of a job have in common: ids, days, times and small counts. */
final class Reader {
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("uuuu-M-d").withResolverStyle(ResolverStyle.STRICT);
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("H:mm").withResolverStyle(ResolverStyle.STRICT);

    private Reader() {}

    /** An id that the page made; a form without one is not a form of ours. */
    static UUID own(@Nullable UUID id) {
        if (id == null) {
            throw new Refused("The form did not arrive whole. Reload the page and try again.");
        }
        return id;
    }

    static UUID id(String typed, String sentence) {
        try {
            return UUID.fromString(typed.strip());
        } catch (IllegalArgumentException e) {
            throw new NotUnderstood(sentence);
        }
    }

    static LocalDate day(String typed) {
        try {
            LocalDate day = LocalDate.parse(typed.strip(), DAY);
            if (day.getYear() < 2000 || day.getYear() > 2199) {
                throw new NotUnderstood("Give a day between the years 2000 and 2199.");
            }
            return day;
        } catch (DateTimeParseException e) {
            throw new NotUnderstood("Give a day as 2026-11-25.");
        }
    }

    static LocalTime time(String typed) {
        try {
            return LocalTime.parse(typed.strip(), TIME);
        } catch (DateTimeParseException e) {
            throw new NotUnderstood("Give a time as 16:10.");
        }
    }

    static int count(String typed) {
        String tidy = typed.strip();
        if (!tidy.matches("[1-9]\\d{0,2}")) {
            throw new NotUnderstood("Give a whole number from 1 to 999.");
        }
        return Integer.parseInt(tidy);
    }
}
