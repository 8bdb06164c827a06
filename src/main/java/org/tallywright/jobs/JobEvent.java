package org.tallywright.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One change of state of a job, a stage or a task, or a walk-through; written once and never changed. */
@Entity
@Table(name = "job_event")
public class JobEvent {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID taskId;
    private @Nullable UUID stageId;
    private String kind;
    private String fromState;
    private String toState;
    private LocalDate onDate;
    private Instant at;
    private @Nullable UUID personId;
    private String note;

    @SuppressWarnings("NullAway.Init")
    protected JobEvent() {}

    JobEvent(UUID id, UUID jobId, String kind, Change change, When when, @Nullable UUID personId, String note) {
        this.id = id;
        this.jobId = jobId;
        this.kind = kind;
        this.taskId = change.taskId();
        this.stageId = change.stageId();
        this.fromState = change.from();
        this.toState = change.to();
        this.onDate = when.on();
        this.at = when.at();
        this.personId = personId;
        this.note = note;
    }

    /** What changed, from where to where. */
    record Change(@Nullable UUID taskId, @Nullable UUID stageId, String from, String to) {}

    /** The day it counts for and the moment it was written down. */
    record When(LocalDate on, Instant at) {}
}
