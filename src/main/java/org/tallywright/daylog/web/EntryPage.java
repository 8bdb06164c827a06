package org.tallywright.daylog.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Stale;

/**
 * One entry with its trail.
 *
 * @param personId null for the reader's own
 * @param form null for an entry that was taken off its day, or stands still
 * @param fixed why it stands still, or null
 * @param date as typed
 * @param versions what is kept and what was typed, where the two met
 * @param anew what was typed for an entry that was taken off meanwhile, ready to be logged once more
 * @param logged by whom and when
 */
record EntryPage(
        UUID id,
        String title,
        String person,
        @Nullable UUID personId,
        String day,
        String dayHref,
        @Nullable String jobHref,
        @Nullable RowForm form,
        @Nullable String fixed,
        String date,
        String logged,
        boolean fromMemory,
        @Nullable String conflict,
        List<Stale.Row> versions,
        @Nullable RowForm anew,
        Map<String, String> errors,
        List<DayPage.Ask> asks,
        List<DayPage.Choices> choices,
        List<Act> trail) {

    EntryPage with(List<Stale.Row> both) {
        return new EntryPage(
                id,
                title,
                person,
                personId,
                day,
                dayHref,
                jobHref,
                form,
                fixed,
                date,
                logged,
                fromMemory,
                conflict,
                both,
                anew,
                errors,
                asks,
                choices,
                trail);
    }

    record Act(String moment, String who, String what, List<Difference> differences) {}

    record Difference(String label, String before, String after) {}
}
