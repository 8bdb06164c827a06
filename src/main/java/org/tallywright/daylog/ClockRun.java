package org.tallywright.daylog;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.HourClass;

/**
 * A stretch that a person's clock ran for. It is no hours yet: it is offered, and becomes hours as an entry of its day.
 *
 * @param date the shop's date when it began; what it comes to belongs to that day
 * @param confirmedAt when the person last said that it runs rightly
 * @param endedAt null while it runs
 * @param endKnown whether the end is what the person said; nothing is offered before
 * @param entryId the entry it was put in as, or null
 * @param droppedAt when it was thrown away, or null
 */
public record ClockRun(
        UUID id,
        UUID personId,
        LocalDate date,
        Target target,
        HourClass hourClass,
        Place place,
        Instant startedAt,
        Instant confirmedAt,
        @Nullable Instant endedAt,
        boolean endKnown,
        @Nullable UUID entryId,
        @Nullable Instant droppedAt) {

    public boolean runs() {
        return endedAt == null;
    }

    /** Whether it is finished and still to be put in or thrown away. */
    public boolean offered() {
        return endKnown && entryId == null && droppedAt == null;
    }

    boolean on(Target otherTarget, HourClass otherClass) {
        return target.equals(otherTarget) && hourClass == otherClass;
    }

    public boolean alike(ClockRun other) {
        return date.equals(other.date) && on(other.target, other.hourClass);
    }

    /** Whole minutes of several runs together, half a minute rounded up; seconds are only lost once. */
    public static int minutes(Collection<ClockRun> runs) {
        long seconds = runs.stream()
                .map(run -> run.endedAt == null ? Duration.ZERO : Duration.between(run.startedAt, run.endedAt))
                .mapToLong(Duration::toSeconds)
                .sum();
        return Math.toIntExact((seconds + 30) / 60);
    }
}
