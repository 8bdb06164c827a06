package org.tallywright.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** Passive time that a finished task started: glue, paint, boards getting used to the room. Calendar time, nights count. */
@Entity
@Table(name = "wait")
public class Wait {
    static final Duration LONGEST = Duration.ofDays(365);

    @Id
    private UUID id;

    private UUID jobId;
    private UUID taskId;
    private int position;
    private String what;
    private Instant startedAt;
    private int minutes;
    private Instant endsAt;
    private @Nullable Instant endedAt;
    private @Nullable UUID startedBy;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Wait() {}

    Wait(UUID id, Task task, KindFacts.KindWait kind, Instant startedAt, UUID by) {
        this.id = id;
        this.jobId = task.jobId();
        this.taskId = task.id();
        this.position = kind.position();
        this.what = kind.what();
        this.startedAt = startedAt;
        this.minutes = kind.minutes();
        this.endsAt = startedAt.plus(Duration.ofMinutes(kind.minutes()));
        this.startedBy = by;
    }

    /** Still tacky, or a warm shop: another end than the catalogue said. */
    void push(Instant newEnd) {
        if (endedAt != null) {
            throw new Refused("This wait is over already.");
        }
        if (!newEnd.isAfter(startedAt)) {
            throw new Refused("endsAt", "A wait ends after it started.");
        }
        if (newEnd.isAfter(startedAt.plus(LONGEST))) {
            throw new Refused("endsAt", "A wait lasts a year at most.");
        }
        endsAt = newEnd;
    }

    void end(Instant now) {
        if (endedAt == null) {
            endedAt = now;
        }
    }

    public UUID id() {
        return id;
    }

    public String what() {
        return what;
    }

    public Instant endsAt() {
        return endsAt;
    }

    public @Nullable Instant endedAt() {
        return endedAt;
    }

    public int version() {
        return version == null ? 0 : version;
    }
}
