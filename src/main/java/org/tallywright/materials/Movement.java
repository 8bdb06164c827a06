package org.tallywright.materials;

import jakarta.persistence.Id;
import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Quantity;

/** What all comings and goings of material have: which material, how much, for which job (null: stock). */
@MappedSuperclass
abstract class Movement {
    @Id
    private UUID id;

    private @Nullable UUID jobId;
    private UUID materialId;
    private Quantity quantity;
    private String note;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    Movement() {}

    Movement(UUID id, MovementDraft draft) {
        this.id = id;
        this.jobId = draft.jobId();
        this.materialId = draft.materialId();
        this.quantity = draft.quantity();
        this.note = draft.note();
    }

    UUID id() {
        return id;
    }

    @Nullable
    UUID jobId() {
        return jobId;
    }

    int version() {
        return version == null ? 0 : version;
    }

    /** The entry as a draft, for comparing a repeated save with what is kept. */
    abstract MovementDraft draft();

    void correct(MovementDraft draft) {
        jobId = draft.jobId();
        materialId = draft.materialId();
        quantity = draft.quantity();
        note = draft.note();
    }

    MovementDraft.Common common() {
        return new MovementDraft.Common(jobId, materialId, quantity, note);
    }
}
