package org.tallywright.daylog;

import org.jspecify.annotations.Nullable;
import org.tallywright.shared.ClockSpan;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;

/**
 * What an entry says, apart from whose and which day it is.
 *
 * @param minutes above nothing, at most a day
 * @param span the clock times, where they were given
 * @param reason why it had to be done again; rework has one
 */
public record Content(
        Target target,
        HourClass hourClass,
        int minutes,
        @Nullable ClockSpan span,
        String note,
        String reason) {
    public Hours hours() {
        return new Hours(minutes);
    }
}
