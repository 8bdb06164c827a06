package org.tallywright.web;

import java.util.Locale;

/** What a person of the shop may see and do. */
public enum Role {
    OWNER,
    LEAD,
    HELPER,
    BOOKKEEPER;

    /** As stored and shown: lower case. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Reads the stored form; throws {@link IllegalArgumentException} on any other text. */
    public static Role of(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }

    public String label() {
        return name().charAt(0) + code().substring(1);
    }

    /** Whether people of this role log hours. */
    public boolean logsHours() {
        return this != BOOKKEEPER;
    }
}
