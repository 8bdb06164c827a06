package org.tallywright.measuring;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** A part of solid wood that moves across its width with the air of the room. */
@Entity
class SolidPart implements OfJob<PartDetails> {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceId;
    private String name;
    private String species;
    private String cut;
    private Length width;
    private BigDecimal moisture;
    private String note;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected SolidPart() {}

    @SuppressWarnings("NullAway.Init")
    SolidPart(UUID id, UUID jobId, PartDetails details, UUID by) {
        this.id = id;
        this.jobId = jobId;
        change(details, by);
    }

    @Override
    public final void change(PartDetails details, UUID by) {
        pieceId = details.pieceId();
        name = details.name();
        species = details.species().code();
        cut = details.cut().code();
        width = details.width();
        moisture = details.moisture();
        note = details.note();
    }

    @Override
    public PartDetails details() {
        return new PartDetails(
                pieceId,
                name,
                Species.valueOf(species.toUpperCase(Locale.ROOT)),
                Cut.valueOf(cut.toUpperCase(Locale.ROOT)),
                width,
                moisture,
                note);
    }

    @Override
    public UUID id() {
        return id;
    }

    @Override
    public UUID jobId() {
        return jobId;
    }

    @Override
    public int version() {
        return version == null ? 0 : version;
    }
}
