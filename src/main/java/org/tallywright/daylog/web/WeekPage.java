package org.tallywright.daylog.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;

/**
 * Hours by week: everybody's one week, or one person's last five.
 *
 * @param person whose weeks, or null for everybody
 * @param days headings of the seven days
 * @param overtime whether it is shown
 * @param over heading of the overtime
 * @param gaps weekdays without hours or a mark
 */
record WeekPage(
        String title,
        @Nullable UUID person,
        List<String> days,
        List<Line> lines,
        Hours total,
        boolean overtime,
        String over,
        List<Gap> gaps,
        String previous,
        @Nullable String next,
        @Nullable String everybody) {

    /** @param state how far the week has come, empty while it is open */
    record Line(String label, @Nullable String href, List<Cell> cells, Hours sum, String over, String state) {}

    /**
     * A day.
     *
     * @param note of its mark
     * @param state empty, gap or mark
     * @param href of the day sheet, where the reader may open it
     */
    record Cell(
            String text,
            String note,
            String state,
            @Nullable String href) {}

    record Gap(String label, @Nullable String href, String action, String date, UUID person) {}
}
