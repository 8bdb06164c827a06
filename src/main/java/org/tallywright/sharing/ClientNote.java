package org.tallywright.sharing;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A sentence meant for the client; shown to him only when the owner chose so. */
@Entity
class ClientNote {
    @Id
    private UUID id;

    private UUID jobId;
    private LocalDate onDate;
    private String text;
    private boolean shown;
    private @Nullable UUID writtenBy;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    ClientNote() {}

    ClientNote(UUID id, UUID jobId, LocalDate onDate, String text, boolean shown, UUID writtenBy) {
        this.id = id;
        this.jobId = jobId;
        this.onDate = onDate;
        this.text = text;
        this.shown = shown;
        this.writtenBy = writtenBy;
    }

    boolean says(UUID job, String other, boolean otherShown) {
        return jobId.equals(job) && text.equals(other) && shown == otherShown;
    }

    String text() {
        return text;
    }

    boolean shown() {
        return shown;
    }

    void show(boolean nowShown) {
        shown = nowShown;
    }
}
