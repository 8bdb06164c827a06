package org.tallywright.daylog;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.LoggedTime;
import org.tallywright.shared.Stale;

/**
 * An entry in words, field by field, so that two versions of it can be laid side by side.
 *
 * @param day as a date in ISO form, or as typed
 */
public record Said(String day, String went, String hours, String hourClass, String note, String reason) {
    public static Said of(Entry entry) {
        return of(entry.date().toString(), entry.place().inWords(), entry.content());
    }

    static Said of(String day, String went, Content content) {
        return new Said(
                day,
                went,
                hours(content),
                content.hourClass().label().toLowerCase(Locale.ROOT),
                content.note(),
                content.reason());
    }

    private static String hours(Content content) {
        Hours hours = content.hours();
        return content.span() == null ? hours.toString() : new LoggedTime(hours, List.of(content.span()), null).typed();
    }

    private static final Said OFF = new Said("", "", "taken off the day", "", "", "");

    /**
     * Both versions; null stands for an entry that is off its day. What is empty in both is left out.
     *
     * @param now as it is kept
     * @param typed as the refused save would have had it
     */
    public static List<Stale.Row> beside(@Nullable Said now, @Nullable Said typed) {
        Said kept = now == null ? OFF : now;
        Said wanted = typed == null ? OFF : typed;
        List<Stale.Row> rows = new ArrayList<>();
        add(rows, "Hours", kept.hours, wanted.hours);
        add(rows, "Went into", kept.went, wanted.went);
        add(rows, "Hour class", kept.hourClass, wanted.hourClass);
        add(rows, "Day", kept.day, wanted.day);
        add(rows, "Note", kept.note, wanted.note);
        add(rows, "Why again", kept.reason, wanted.reason);
        return rows;
    }

    /** The refusal of a save that met another one. */
    static Stale stale(@Nullable Entry now, @Nullable Said typed) {
        return new Stale("time entry", beside(now == null ? null : of(now), typed));
    }

    private static void add(List<Stale.Row> rows, String label, String kept, String typed) {
        if (!(kept.isEmpty() && typed.isEmpty())) {
            rows.add(new Stale.Row(label, kept, typed));
        }
    }
}
