package org.tallywright.catalog;

import java.util.Locale;
import org.tallywright.shared.NotUnderstood;

/** Where work of a kind is done. */
public enum Place {
    SHOP,
    SITE;

    public static Place of(String typed) {
        return switch (typed.strip().toLowerCase(Locale.ROOT)) {
            case "shop" -> SHOP;
            case "site" -> SITE;
            default -> throw new NotUnderstood("Choose shop or site.");
        };
    }

    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
