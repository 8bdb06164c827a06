package org.tallywright.people.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Pay from a day on, as typed. */
record WageForm(
        @Nullable UUID id,
        @Nullable String from,
        @Nullable String wage,
        @Nullable String burden) {
    static WageForm blank(UUID id, String from) {
        return new WageForm(id, from, "", "");
    }
}
