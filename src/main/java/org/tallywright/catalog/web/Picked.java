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

    static UUID id(@Nullable String typed) {
        return id(typed, "Choose from the list.");
    }

    /** @throws NotUnderstood with that sentence where nothing, or nothing from the list, was chosen */
    static UUID id(@Nullable String typed, String sentence) {
        try {
            return UUID.fromString(text(typed).strip());
        } catch (IllegalArgumentException notAnId) {
            throw new NotUnderstood(sentence);
        }
    }
}
