package org.tallywright.sharing.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.sharing.ClientPage;

/** The three small forms of the sharing tab, as typed; each uses some of the fields. */
record SharingForm(
        @Nullable UUID id,
        @Nullable String label,
        @Nullable String days,
        @Nullable String text,
        @Nullable String shown,
        @Nullable String from,
        @Nullable String to,
        @Nullable String visitNote,
        @Nullable Integer version) {
    static final SharingForm BLANK = new SharingForm(null, null, null, null, null, null, null, null, null);

    static SharingForm of(UUID id, ClientPage.@Nullable Visit visit) {
        String from = visit == null ? "" : visit.fromDate().toString();
        String to = visit == null ? "" : visit.toDate().toString();
        String note = visit == null ? "" : visit.note();
        return new SharingForm(id, "", "90", "", "true", from, to, note, visit == null ? null : visit.version());
    }

    static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
