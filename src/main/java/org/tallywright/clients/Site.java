package org.tallywright.clients;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Where a client's work is done. */
@Entity
class Site {
    @Id
    private UUID id;

    private UUID clientId;
    private String address;
    private String accessNote;
    private @Nullable Integer oneWayMinutes;
    private boolean occupied;
    private boolean outOfSquare;
    private boolean stairs;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Site() {}

    @SuppressWarnings("NullAway.Init")
    Site(SaveSite first) {
        this.id = first.id();
        this.clientId = first.clientId();
        rewrite(first);
    }

    UUID clientId() {
        return clientId;
    }

    @Nullable
    Integer version() {
        return version;
    }

    SaveSite content() {
        return new SaveSite(id, null, clientId, address, accessNote, oneWayMinutes, occupied, outOfSquare, stairs);
    }

    final void rewrite(SaveSite save) {
        address = save.address();
        accessNote = save.accessNote();
        oneWayMinutes = save.oneWayMinutes();
        occupied = save.occupied();
        outOfSquare = save.outOfSquare();
        stairs = save.stairs();
    }
}
