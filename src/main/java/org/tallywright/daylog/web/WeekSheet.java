package org.tallywright.daylog.web;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;

/**
 * One person's week: hours by day and job, what is missing, how far the week has come.
 *
 * @param whose name of the person, and the id where it is not the reader
 * @param days headings of the seven days
 * @param totals of the seven days, with the way to each
 * @param overtime in hours, in words, empty where there is none
 * @param rule of the overtime in words, empty where the shop has none
 * @param pay null unless the reader may see wages and each worked day has one
 * @param gaps weekdays without hours or a mark; none in a week that stands still
 * @param moves what the reader may do with the week now
 * @param correction the form of a correction, or null where there is none to make
 */
record WeekSheet(
        LocalDate monday,
        String title,
        Whose whose,
        List<String> days,
        List<Line> lines,
        List<Total> totals,
        Hours sum,
        String overtime,
        String rule,
        @Nullable Pay pay,
        List<WeekPage.Gap> gaps,
        State state,
        List<Move> moves,
        List<Corrected> corrections,
        @Nullable CorrectionForm correction,
        List<DayPage.Choices> choices,
        Links links) {

    record Whose(String name, @Nullable UUID other) {}

    /** A job of the week, or an account of the shop, with its hours day by day; empty for none. */
    record Line(String what, String aside, @Nullable String href, List<String> cells, Hours sum) {}

    record Total(String text, @Nullable String href) {}

    /** All in the shop's currency, to the cent, before taxes. */
    record Pay(String straight, String premium, String all) {}

    /**
     * How far the week has come.
     *
     * @param acts who did what when, in words
     * @param atApproval what the week came to then, empty while it is not approved
     * @param sentBack why it was, or empty
     */
    record State(
            String code,
            String label,
            List<String> acts,
            String atApproval,
            String sentBack,
            @Nullable Integer version) {}

    record Move(String code, String label, boolean note) {}

    record Corrected(String id, String day, String what, String hours, String reason, String by, boolean less) {}

    record Links(String previous, @Nullable String next, String all, String path) {}
}
