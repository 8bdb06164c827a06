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
 * @param overtime whether hours over 40 a week are shown
 * @param gaps weekdays without hours or a mark
 */
record WeekPage(
        String title,
        @Nullable UUID person,
        List<String> days,
        List<Line> lines,
        Hours total,
        boolean overtime,
        List<Gap> gaps,
        String previous,
        @Nullable String next,
        @Nullable String everybody) {

    record Line(String label, @Nullable String href, List<Cell> cells, Hours sum, String over) {}

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
