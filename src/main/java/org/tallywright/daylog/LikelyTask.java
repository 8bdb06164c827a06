package org.tallywright.daylog;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Something that a person is likely to have worked on.
 *
 * @param soFar all minutes of this person on it
 * @param lastOn the last day before that the person worked on it, where that is why, or null
 */
public record LikelyTask(
        Place place, int soFar, Why why, @Nullable LocalDate lastOn) {
    /** Why it is offered, the likeliest first. */
    public enum Why {
        PLANNED,
        LAST_DAY,
        READY,
        WEEKDAY,
        LEFT_OVER,
        YOURS,
        RECENT,
        UNDER_WAY
    }
}
