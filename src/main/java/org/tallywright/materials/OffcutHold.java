package org.tallywright.materials;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Keeps an offcut for one job; its id is that of the offcut. */
@Entity
class OffcutHold {
    @Id
    private UUID id;

    private UUID jobId;
    private LocalDate heldOn;
    private UUID heldBy;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected OffcutHold() {}

    @SuppressWarnings("NullAway.Init")
    OffcutHold(UUID offcut, UUID jobId, LocalDate heldOn, UUID heldBy) {
        this.id = offcut;
        pass(jobId, heldOn, heldBy);
    }

    final void pass(UUID job, LocalDate on, UUID by) {
        jobId = job;
        heldOn = on;
        heldBy = by;
    }

    UUID id() {
        return id;
    }

    boolean isFor(UUID job) {
        return jobId.equals(job);
    }
}
