package org.tallywright.setup;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The set-up page as typed. */
public record OpeningForm(
        @Nullable UUID id,
        String code,
        String shopName,
        String timeZone,
        String units,
        String currency,
        String name,
        String signInName,
        String password) {
    public OpeningForm {
        code = kept(code);
        shopName = kept(shopName);
        timeZone = kept(timeZone);
        units = kept(units);
        currency = kept(currency);
        name = kept(name);
        signInName = kept(signInName);
        password = kept(password);
    }

    static OpeningForm blank(UUID id, String zone) {
        return new OpeningForm(id, "", "", zone, "imperial", "USD", "", "", "");
    }

    /** A field that the browser did not send is an empty one. */
    @SuppressWarnings("NullAway")
    private static String kept(String value) {
        return value == null ? "" : value;
    }
}
