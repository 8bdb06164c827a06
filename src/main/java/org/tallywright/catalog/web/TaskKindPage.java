package org.tallywright.catalog.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.KindWait;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.WaitTime;

/** One task kind with what comes before and after it. */
record TaskKindPage(TaskKindCard kind, List<TaskKindCard> before, List<TaskKindCard> after) {
    static TaskKindPage of(TaskKindCard kind, List<TaskKindCard> all) {
        return new TaskKindPage(
                kind,
                all.stream().filter(other -> kind.before().contains(other.id())).toList(),
                all.stream().filter(other -> other.before().contains(kind.id())).toList());
    }

    /** {@code 0.06 to 0.20}, or null where neither end is known. */
    @Nullable
    public String range() {
        if (kind.low() == null && kind.high() == null) {
            return null;
        }
        return (kind.low() == null ? "?" : kind.low()) + " to " + (kind.high() == null ? "?" : kind.high());
    }

    public String time(KindWait wait) {
        return WaitTime.words(wait.minutes());
    }
}
