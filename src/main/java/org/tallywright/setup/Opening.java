package org.tallywright.setup;

import java.time.ZoneId;
import java.util.Currency;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.people.Crew;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.shop.ShopChoices;
import org.tallywright.shop.ShopSettings;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** Makes the shop, its owner and its starting catalogue in one transaction, for whoever holds the code. */
@Service
public class Opening {
    private final SetupCode codes;
    private final ShopSettings settings;
    private final Crew crew;
    private final CatalogSeed catalog;
    private final Trail trail;

    Opening(SetupCode codes, ShopSettings settings, Crew crew, CatalogSeed catalog, Trail trail) {
        this.codes = codes;
        this.settings = settings;
        this.crew = crew;
        this.catalog = catalog;
        this.trail = trail;
    }

    /** @throws Refused with the field that stands in the way; nothing is then made and the code stays good */
    @Transactional
    public SignedIn open(UUID owner, OpeningForm form) {
        codes.use(form.code());
        trail.byShop();
        settings.open(shopName(form.shopName()), zone(form.timeZone()), units(form.units()), currency(form.currency()));
        SignedIn me = crew.firstOwner(owner, form.name(), form.signInName(), form.password());
        catalog.load();
        return me;
    }

    private static String shopName(String typed) {
        try {
            return Typed.requiredLine(typed, 80);
        } catch (Refused refused) {
            throw refused.at("shopName");
        }
    }

    private static ZoneId zone(String typed) {
        try {
            return ShopChoices.zone(typed);
        } catch (Refused refused) {
            throw refused.at("timeZone");
        }
    }

    private static Units units(String typed) {
        return switch (typed) {
            case "imperial" -> Units.IMPERIAL;
            case "metric" -> Units.METRIC;
            default -> throw new Refused("units", "Choose inches and feet or millimetres and metres.");
        };
    }

    private static Currency currency(String typed) {
        try {
            return ShopChoices.currency(typed);
        } catch (Refused refused) {
            throw refused.at("currency");
        }
    }
}
