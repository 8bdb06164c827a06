package org.tallywright.estimates.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** What was chosen from a list. */
final class Picked {
    private Picked() {}

    /** Null where nothing is chosen. */
    static @Nullable UUID maybe(@Nullable String value) {
        return value == null || value.isBlank() ? null : id(value);
    }

    static UUID id(@Nullable String value) {
        try {
            return UUID.fromString(text(value).strip());
        } catch (IllegalArgumentException notOne) {
            throw new Refused("Pick one of the list.");
        }
    }

    static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
