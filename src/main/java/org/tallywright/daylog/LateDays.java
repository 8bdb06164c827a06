package org.tallywright.daylog;

import java.time.LocalDate;
import java.time.ZoneOffset;

/** Days logged long after: the hours are kept and marked, for what is remembered late is remembered smoother. */
public final class LateDays {
    public static final String KEY = "late";
    public static final Question QUESTION =
            new Question(KEY, null, "This day is more than a week ago. The hours will carry the mark \"from memory\".");
    private static final int DAYS = 7;

    private LateDays() {}

    public static boolean late(LocalDate date, LocalDate loggedOn) {
        return date.isBefore(loggedOn.minusDays(DAYS));
    }

    /** By the date in UTC: a day more or less does not matter here. */
    public static boolean fromMemory(Entry entry) {
        return late(entry.date(), entry.loggedAt().atOffset(ZoneOffset.UTC).toLocalDate());
    }
}
