package org.tallywright.jobs;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** How far one job is in one of the shop's stages. */
@Entity
@Table(name = "job_stage")
public class JobStage {
    @EmbeddedId
    private JobStageId id;

    private boolean skipped;
    private @Nullable LocalDate enteredOn;
    private @Nullable UUID enteredBy;
    private @Nullable LocalDate doneOn;
    private @Nullable UUID doneBy;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected JobStage() {}

    JobStage(UUID jobId, UUID stageId) {
        this.id = new JobStageId(jobId, stageId);
    }

    JobStageId id() {
        return id;
    }

    /** {@code ahead}, {@code entered}, {@code done} or {@code skipped}. */
    public String state() {
        if (skipped) {
            return "skipped";
        }
        return doneOn != null ? "done" : enteredOn != null ? "entered" : "ahead";
    }

    void enter(LocalDate on, UUID by) {
        skipped = false;
        doneOn = null;
        doneBy = null;
        if (enteredOn == null) {
            enteredOn = on;
            enteredBy = by;
        }
    }

    void done(LocalDate on, UUID by) {
        if (enteredOn == null) {
            enter(on, by);
        }
        skipped = false;
        doneOn = on;
        doneBy = by;
    }

    void skip() {
        if (enteredOn != null) {
            throw new Refused("This stage was entered already; mark it done instead.");
        }
        skipped = true;
    }

    /** Back to ahead: a stage entered or skipped by mistake. */
    void clear() {
        skipped = false;
        enteredOn = null;
        enteredBy = null;
        doneOn = null;
        doneBy = null;
    }
}
