package org.tallywright.photos;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What is said of a photo of a job; its pictures lie apart and never change. */
@Entity
class Photo {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceId;
    private Instant takenAt;
    private String datedBy;
    private Instant addedAt;
    private UUID addedBy;
    private String caption;
    private boolean forClient;
    private int width;
    private int height;
    private byte[] originalHash;
    private @Nullable Instant removedAt;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Photo() {}

    @SuppressWarnings("NullAway.Init")
    Photo(UUID id, UUID jobId, PhotoDetails details, byte[] originalHash, int width, int height) {
        this.id = id;
        this.jobId = jobId;
        this.originalHash = originalHash.clone();
        this.width = width;
        this.height = height;
        change(details);
    }

    final void change(PhotoDetails details) {
        caption = details.caption();
        pieceId = details.pieceId();
        forClient = details.forClient();
    }

    Photo added(Instant at, UUID by, @Nullable Instant taken) {
        addedAt = at;
        addedBy = by;
        takenAt = taken == null ? at : taken;
        datedBy = taken == null ? "arrival" : "camera";
        return this;
    }

    void show(boolean toClient) {
        forClient = toClient;
    }

    void remove(Instant at) {
        removedAt = removedAt == null ? at : removedAt;
    }

    void putBack() {
        removedAt = null;
    }

    UUID id() {
        return id;
    }

    UUID jobId() {
        return jobId;
    }

    byte[] originalHash() {
        return originalHash.clone();
    }

    boolean removed() {
        return removedAt != null;
    }

    boolean addedBy(UUID person) {
        return addedBy.equals(person);
    }

    PhotoDetails details() {
        return new PhotoDetails(caption, pieceId, forClient);
    }

    int version() {
        return version == null ? 0 : version;
    }
}
