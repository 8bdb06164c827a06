package org.tallywright.daylog;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A person's week, Monday to Sunday.
 *
 * @param submitted null until it is handed in, as are the others until then
 * @param minutes what it came to when it was approved
 * @param note why it was sent back
 * @param version null for a week that nobody touched yet
 */
public record Week(
        UUID person,
        LocalDate monday,
        WeekState state,
        @Nullable Act submitted,
        @Nullable Act approved,
        @Nullable Act locked,
        @Nullable Integer minutes,
        String note,
        @Nullable Integer version) {
    /** Who and when. */
    public record Act(String who, Instant at) {}

    static Week open(UUID person, LocalDate monday) {
        return new Week(person, monday, WeekState.OPEN, null, null, null, null, "", null);
    }

    public static LocalDate mondayOf(LocalDate date) {
        return date.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    public LocalDate sunday() {
        return monday.plusDays(6);
    }
}
