package org.tallywright.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** Something left to put right at the end: raised, done, signed off. */
@Entity
@Table(name = "punch_item")
public class PunchItem {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceId;
    private String text;
    private LocalDate raisedOn;
    private @Nullable UUID raisedBy;
    private @Nullable LocalDate doneOn;
    private @Nullable UUID doneBy;
    private @Nullable LocalDate signedOffOn;
    private String signedOffBy;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected PunchItem() {}

    PunchItem(UUID id, UUID jobId, @Nullable UUID pieceId, String text, LocalDate on, UUID by) {
        this.id = id;
        this.jobId = jobId;
        this.pieceId = pieceId;
        this.text = text;
        this.raisedOn = on;
        this.raisedBy = by;
        this.signedOffBy = "";
    }

    boolean says(@Nullable UUID piece, String words) {
        return text.equals(words) && (piece == null ? pieceId == null : piece.equals(pieceId));
    }

    void done(LocalDate on, UUID by) {
        if (doneOn == null) {
            doneOn = on;
            doneBy = by;
        }
    }

    /** A mistaken tick is taken back as long as nobody signed. */
    void notDone() {
        if (signedOffOn != null) {
            throw new Refused("This item is signed off; raise a new one instead.");
        }
        doneOn = null;
        doneBy = null;
    }

    void signOff(LocalDate on, String name) {
        if (doneOn == null) {
            throw new Refused("Mark the item as done before it is signed off.");
        }
        if (signedOffOn == null) {
            signedOffOn = on;
            signedOffBy = name;
        }
    }

    public UUID id() {
        return id;
    }

    UUID jobId() {
        return jobId;
    }

    @Nullable
    UUID pieceId() {
        return pieceId;
    }

    public String text() {
        return text;
    }

    public boolean isDone() {
        return doneOn != null;
    }

    public boolean isSignedOff() {
        return signedOffOn != null;
    }
}
