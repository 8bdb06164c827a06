package org.tallywright.clients;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Adds a site to a client or rewrites one; the parts are those of {@link SiteCard}. A site stays with its client. */
public record SaveSite(
        UUID id,
        @Nullable Integer version,
        UUID clientId,
        String address,
        String accessNote,
        @Nullable Integer oneWayMinutes,
        boolean occupied,
        boolean outOfSquare,
        boolean stairs) {
    SaveSite unversioned() {
        return new SaveSite(id, null, clientId, address, accessNote, oneWayMinutes, occupied, outOfSquare, stairs);
    }
}
