package org.tallywright.daylog.web;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.Corrections;
import org.tallywright.daylog.Target;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/** A correction of a locked week as typed. */
record CorrectionForm(
        @Nullable String id,
        @Nullable String date,
        @Nullable String what,
        @Nullable String hourClass,
        @Nullable String time,
        @Nullable String reason) {
    static CorrectionForm blank(LocalDate monday) {
        return new CorrectionForm(Ids.next().toString(), monday.toString(), "", HourClass.DIRECT.code(), "", "");
    }

    /** The correction typed, or null with the refusals in the reader. */
    Corrections.@Nullable Wanted read(UUID person, LocalDate monday, FormReader read) {
        UUID known = known();
        LocalDate day = read.field("date", () -> day(monday));
        Target target = read.field("what", () -> Target.of(text(what)));
        HourClass kind = read.field("hourClass", () -> HourClass.of(text(hourClass)));
        Hours really = read.field("time", () -> really(text(time)));
        String why = read.field("reason", () -> Typed.requiredLine(text(reason), 300));
        return day == null || target == null || kind == null || really == null || why == null
                ? null
                : new Corrections.Wanted(known, person, day, target, kind, really, why);
    }

    private UUID known() {
        try {
            return UUID.fromString(text(id));
        } catch (IllegalArgumentException damaged) {
            throw new Refused("A hidden part of this page came back damaged. Open the week afresh.");
        }
    }

    private LocalDate day(LocalDate monday) {
        LocalDate day = readDay();
        if (day.isBefore(monday) || day.isAfter(monday.plusDays(6))) {
            throw new Refused("Pick a day of this week.");
        }
        return day;
    }

    private LocalDate readDay() {
        try {
            return DayController.date(text(date));
        } catch (NotHere noDay) {
            throw new Refused("Pick a day of this week.");
        }
    }

    private static Hours really(String typed) {
        Hours hours = Hours.parseTotal(typed);
        if (hours.minutes() > 24 * 60) {
            throw new Refused("A day has 24 hours.");
        }
        return hours;
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
