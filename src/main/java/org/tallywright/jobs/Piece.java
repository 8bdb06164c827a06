package org.tallywright.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** A thing to be built in a job, with its exact sizes. */
@Entity
@Table(name = "piece")
public class Piece {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceKindId;
    private String name;
    private @Nullable Length width;
    private @Nullable Length height;
    private @Nullable Length depth;
    private int count;
    private String note;
    private int position;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Piece() {}

    @SuppressWarnings("NullAway.Init")
    Piece(UUID id, UUID jobId, PieceDetails details, int position) {
        this.id = id;
        this.jobId = jobId;
        this.position = position;
        change(details);
    }

    void change(PieceDetails details) {
        pieceKindId = details.pieceKindId();
        name = details.name();
        width = details.width();
        height = details.height();
        depth = details.depth();
        count = details.count();
        note = details.note();
    }

    public PieceDetails details() {
        return new PieceDetails(pieceKindId, name, width, height, depth, count, note);
    }

    public UUID id() {
        return id;
    }

    public UUID jobId() {
        return jobId;
    }

    public String name() {
        return name;
    }

    public int version() {
        return version == null ? 0 : version;
    }
}
