package org.tallywright.takeoff;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What was answered for one piece, one {@code name = value} a line. */
@Entity
class PieceTakeoff {
    @Id
    private UUID id;

    private UUID jobId;
    private String answers;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected PieceTakeoff() {}

    @SuppressWarnings("NullAway.Init")
    PieceTakeoff(UUID pieceId, UUID jobId, String answers) {
        this.id = pieceId;
        this.jobId = jobId;
        this.answers = answers;
    }

    void answer(String all) {
        answers = all;
    }

    String answers() {
        return answers;
    }

    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen);
    }
}
