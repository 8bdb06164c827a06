package org.tallywright.daylog.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** The boxes of one entry as typed. */
record EntryForm(
        @Nullable String version,
        @Nullable String date,
        @Nullable String what,
        @Nullable String hourClass,
        @Nullable String time,
        @Nullable String note,
        @Nullable String reason) {

    RowForm row(UUID id) {
        if (version == null || !version.matches("\\d{1,9}")) {
            throw new Refused("A hidden part of this page came back damaged. Open the entry afresh.");
        }
        return new RowForm(
                id, Integer.valueOf(version), text(what), text(hourClass), text(time), text(note), text(reason), true);
    }

    String dateText() {
        return text(date).strip();
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
