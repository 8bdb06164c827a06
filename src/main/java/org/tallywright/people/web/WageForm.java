package org.tallywright.people.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Pay from a day on, as typed; {@code corrects} holds the figures of that day that the page has shown. */
record WageForm(
        @Nullable UUID id,
        @Nullable String from,
        @Nullable String wage,
        @Nullable String burden,
        @Nullable String corrects) {
    WageForm correcting(@Nullable String figures) {
        return new WageForm(id, from, wage, burden, figures);
    }

    static WageForm blank(UUID id, String from) {
        return new WageForm(id, from, "", "", "");
    }
}
