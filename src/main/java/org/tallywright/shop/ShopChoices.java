package org.tallywright.shop;

import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.tallywright.shared.Refused;

/** Time zone and currency as somebody types or picks them, at set-up and in the settings. */
public final class ShopChoices {
    /** Sums are kept to the hundredth. */
    private static final int DECIMALS = 2;

    private static final String PLACES =
            "(Africa|America|Antarctica|Asia|Atlantic|Australia|Europe|Indian|Pacific)/.*|UTC";
    private static final Set<String> ALSO_UTC = Set.of("Etc/UTC", "Z");

    private ShopChoices() {}

    /** The time zones of places, and UTC, by name. */
    public static List<String> zones() {
        return ZoneId.getAvailableZoneIds().stream()
                .filter(id -> id.matches(PLACES))
                .sorted()
                .toList();
    }

    /**
     * A zone of a place, which knows when its clocks change; or UTC.
     *
     * @throws Refused for an offset, an abbreviation and an unknown name
     */
    public static ZoneId zone(String typed) {
        String name = ALSO_UTC.contains(typed.strip()) ? "UTC" : typed.strip();
        if (!name.matches(PLACES) || !ZoneId.getAvailableZoneIds().contains(name)) {
            throw new Refused("Name a time zone by its place, such as America/New_York; hours from Greenwich and"
                    + " abbreviations do not tell when the clocks change.");
        }
        return ZoneId.of(name);
    }

    /** What a machine or a browser says of itself, where it is good for a shop, else UTC. */
    public static ZoneId zoneOrUtc(String guessed) {
        try {
            return zone(guessed);
        } catch (Refused noPlace) {
            return ZoneId.of("UTC");
        }
    }

    /**
     * A currency that people pay with, counted in hundredths.
     *
     * @throws Refused for an unknown code, for codes of no money (test, metals) and for another minor unit
     */
    public static Currency currency(String typed) {
        Currency currency;
        try {
            currency = Currency.getInstance(typed.strip().toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException unknown) {
            throw new Refused("Use the three letters of the currency, such as USD or EUR.");
        }
        if (currency.getDefaultFractionDigits() < 0) {
            throw new Refused(currency + " is no money that a client pays with; use the letters of one, such as USD.");
        }
        if (currency.getDefaultFractionDigits() != DECIMALS) {
            throw new Refused("Sums are kept to the hundredth here, and " + currency
                    + " is not counted in hundredths; so it cannot be used yet.");
        }
        return currency;
    }
}
