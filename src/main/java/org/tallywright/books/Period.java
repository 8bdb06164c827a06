package org.tallywright.books;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** A range of shop days, both ends included. */
record Period(LocalDate from, LocalDate to) {
    private static final int LONGEST_YEARS = 11;

    /** This month and the one before, unless both ends were given. */
    static Period of(@Nullable String from, @Nullable String to, LocalDate today) {
        LocalDate start =
                from == null || from.isBlank() ? today.withDayOfMonth(1).minusMonths(1) : day("from", from);
        LocalDate end = to == null || to.isBlank() ? today : day("to", to);
        if (end.isBefore(start)) {
            throw new Refused("to", "The last day is before the first.");
        }
        if (start.plusYears(LONGEST_YEARS).isBefore(end)) {
            throw new Refused("to", "Take at most " + LONGEST_YEARS + " years at once.");
        }
        return new Period(start, end);
    }

    private static LocalDate day(String field, String typed) {
        try {
            LocalDate day = LocalDate.parse(typed.strip());
            if (day.getYear() < 1990 || day.getYear() > 2199) {
                throw new Refused(field, "This day is too far away.");
            }
            return day;
        } catch (DateTimeParseException notDate) {
            throw new Refused(field, "Give a day, such as 2026-11-01.");
        }
    }
}
