package org.tallywright.estimates.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** What was chosen from a list, and the id that came with the form. */
final class Picked {
    private Picked() {}

    /** The id that the page made; a form without one is not a form of ours. */
    static UUID own(@Nullable UUID id) {
        if (id == null) {
            throw new Refused("The form did not arrive whole. Reload the page and try again.");
        }
        return id;
    }

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
