package org.tallywright.daylog.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.Content;
import org.tallywright.daylog.Entry;
import org.tallywright.daylog.Place;
import org.tallywright.shared.ClockSpan;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.LoggedTime;

/**
 * One row of the day sheet as it stands in the form, word for word.
 *
 * @param version of the saved entry, or null for a row that was blank when the page was made
 * @param what the code of a {@link org.tallywright.daylog.Target}, or empty while nothing is chosen
 * @param pick whether the page lets the person choose what the hours went into
 */
record RowForm(
        UUID id,
        @Nullable Integer version,
        String what,
        String hourClass,
        String time,
        String note,
        String reason,
        boolean pick) {

    static RowForm of(Entry entry) {
        Content content = entry.content();
        return new RowForm(
                entry.id(),
                entry.version(),
                content.target().code(),
                content.hourClass().code(),
                typed(content.minutes(), content.span()),
                content.note(),
                content.reason(),
                false);
    }

    /** As the hours box shows stored hours; it is read back to the same. */
    static String typed(int minutes, @Nullable ClockSpan span) {
        Hours hours = Hours.ofMinutes(minutes);
        return span == null ? hours.toString() : new LoggedTime(hours, java.util.List.of(span), null).typed();
    }

    static RowForm blank(Place place) {
        return new RowForm(
                Ids.next(), null, place.target().code(), place.usualClass().code(), "", "", "", false);
    }

    static RowForm toPick() {
        return new RowForm(Ids.next(), null, "", HourClass.DIRECT.code(), "", "", "", true);
    }

    boolean saved() {
        return version != null;
    }

    boolean untouched() {
        return version == null && time.isBlank();
    }

    RowForm withTime(String newTime) {
        return new RowForm(id, version, what, hourClass, newTime, note, reason, pick);
    }

    RowForm withClass(String newClass) {
        return new RowForm(id, version, what, newClass, time, note, reason, pick);
    }

    RowForm withVersion(@Nullable Integer newVersion) {
        return new RowForm(id, newVersion, what, hourClass, time, note, reason, pick);
    }

    RowForm toChoose() {
        return new RowForm(id, version, what, hourClass, time, note, reason, true);
    }

    /** The same words in a row of its own. */
    RowForm anew() {
        return new RowForm(Ids.next(), null, what, hourClass, time, note, reason, pick);
    }
}
