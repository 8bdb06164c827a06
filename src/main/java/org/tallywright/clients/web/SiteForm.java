package org.tallywright.clients.web;

import static java.util.Objects.requireNonNull;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.clients.SaveSite;
import org.tallywright.clients.SiteCard;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/** A site as typed. */
record SiteForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String address,
        @Nullable String accessNote,
        @Nullable String drive,
        @Nullable String occupied,
        @Nullable String outOfSquare,
        @Nullable String stairs) {

    static SiteForm blank(UUID id) {
        return new SiteForm(id, null, "", "", "", "", "", "");
    }

    static SiteForm of(SiteCard site) {
        return new SiteForm(
                site.id(),
                site.version(),
                site.address(),
                site.accessNote(),
                site.oneWayMinutes() == null ? "" : site.oneWayMinutes().toString(),
                String.valueOf(site.occupied()),
                String.valueOf(site.outOfSquare()),
                String.valueOf(site.stairs()));
    }

    /** The save this asks for, or null with every refusal in {@code read}. */
    @Nullable
    SaveSite read(UUID savedId, UUID clientId, FormReader read) {
        String readAddress = read.field("address", () -> Typed.requiredLine(ClientForm.text(address), 300));
        String readAccess = read.field("accessNote", () -> Typed.block(ClientForm.text(accessNote), 2000));
        Integer minutes = read.optional("drive", drive, () -> minutes(ClientForm.text(drive)));
        if (read.refused()) {
            return null;
        }
        return new SaveSite(
                savedId,
                version,
                clientId,
                requireNonNull(readAddress),
                requireNonNull(readAccess),
                minutes,
                "true".equals(occupied),
                "true".equals(outOfSquare),
                "true".equals(stairs));
    }

    /** A number alone is minutes here, as the label says; anything else is read as a length of time. */
    private static int minutes(String typed) {
        String bare = typed.strip();
        int minutes = bare.matches("\\d{1,4}")
                ? Integer.parseInt(bare)
                : Hours.parse(bare).minutes();
        if (minutes > 1440) {
            throw new NotUnderstood("The drive is at most 24 hours.");
        }
        return minutes;
    }
}
