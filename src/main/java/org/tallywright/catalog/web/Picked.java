package org.tallywright.catalog.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NotUnderstood;

/** What was typed or chosen, never null. */
final class Picked {
    private Picked() {}

    static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }

    /** @throws NotUnderstood where nothing, or nothing from the list, was chosen */
    static UUID id(@Nullable String typed) {
        try {
            return UUID.fromString(text(typed).strip());
        } catch (IllegalArgumentException notAnId) {
            throw new NotUnderstood("Choose from the list.");
        }
    }
}
