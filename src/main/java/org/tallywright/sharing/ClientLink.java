package org.tallywright.sharing;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One link to a job for a client: unguessable, expiring, revocable. Only the hash of its token is kept. */
@Entity
class ClientLink {
    @Id
    private UUID id;

    private UUID jobId;
    private byte[] tokenHash;
    private String label;
    private Instant createdAt;
    private UUID createdBy;
    private Instant expiresAt;
    private @Nullable Instant revokedAt;
    private @Nullable UUID revokedBy;
    private @Nullable Instant lastSeenAt;
    private int views;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    ClientLink() {}

    ClientLink(
            UUID id, UUID jobId, byte[] tokenHash, String label, Instant createdAt, UUID createdBy, Instant expiresAt) {
        this.id = id;
        this.jobId = jobId;
        this.tokenHash = tokenHash.clone();
        this.label = label;
        this.createdAt = createdAt;
        this.createdBy = createdBy;
        this.expiresAt = expiresAt;
    }

    UUID jobId() {
        return jobId;
    }

    boolean opensAt(Instant now) {
        return revokedAt == null && now.isBefore(expiresAt);
    }

    /** A revoked link stays revoked by whom and when it was first. */
    void revoke(Instant at, UUID by) {
        if (revokedAt == null) {
            revokedAt = at;
            revokedBy = by;
        }
    }
}
