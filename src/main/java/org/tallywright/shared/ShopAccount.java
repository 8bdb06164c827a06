package org.tallywright.shared;

import java.util.Arrays;

/** Where hours go that no job pays for. */
public enum ShopAccount {
    MAINTENANCE("maintenance", "Maintenance"),
    SELLING("selling", "Selling"),
    LOST_BIDS("lost bids", "Lost bids");

    private final String code;
    private final String label;

    ShopAccount(String code, String label) {
        this.code = code;
        this.label = label;
    }

    public static ShopAccount of(String typed) {
        String key = Decimals.tidy(typed).replaceAll("[ _-]", "");
        return Arrays.stream(values())
                .filter(a -> a.code.replace(" ", "").equals(key))
                .findFirst()
                .orElseThrow(() -> new NotUnderstood("\"" + Decimals.shown(typed)
                        + "\" is not a shop account; use maintenance, selling or lost bids."));
    }

    public String code() {
        return code;
    }

    public String label() {
        return label;
    }

    @Override
    public String toString() {
        return label;
    }
}
