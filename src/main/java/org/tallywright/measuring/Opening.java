package org.tallywright.measuring;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapKeyColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.hibernate.annotations.Fetch;
import org.hibernate.annotations.FetchMode;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** An alcove, a bay, a niche or a stretch of wall, as it was measured. */
@Entity
class Opening implements OfJob<OpeningDetails> {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceId;
    private String place;
    private Length goodTo;
    private LocalDate measuredOn;
    private @Nullable UUID measuredBy;
    private String note;

    @ElementCollection
    @Fetch(FetchMode.SUBSELECT)
    @CollectionTable(name = "opening_reading", joinColumns = @JoinColumn(name = "opening_id"))
    @MapKeyColumn(name = "reading")
    @Convert(attributeName = "key", converter = ReadingColumn.class)
    @Column(name = "length")
    private Map<Reading, Length> readings = new HashMap<>();

    @ElementCollection
    @Fetch(FetchMode.SUBSELECT)
    @CollectionTable(name = "opening_mark", joinColumns = @JoinColumn(name = "opening_id"))
    @OrderColumn(name = "position")
    private List<Mark> marks = new ArrayList<>();

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Opening() {}

    @SuppressWarnings("NullAway.Init")
    Opening(UUID id, UUID jobId, OpeningDetails details, UUID by) {
        this.id = id;
        this.jobId = jobId;
        change(details, by);
    }

    @Override
    public final void change(OpeningDetails details, UUID by) {
        pieceId = details.pieceId();
        place = details.place();
        goodTo = details.goodTo();
        measuredOn = details.measuredOn();
        measuredBy = by;
        note = details.note();
        readings.keySet().retainAll(details.readings().keySet());
        readings.putAll(details.readings());
        if (!marks.equals(details.marks())) {
            marks.clear();
            marks.addAll(details.marks());
        }
    }

    @Override
    public OpeningDetails details() {
        return new OpeningDetails(pieceId, place, goodTo, measuredOn, note, readings, marks);
    }

    @Override
    public UUID id() {
        return id;
    }

    @Override
    public UUID jobId() {
        return jobId;
    }

    @Nullable
    UUID measuredBy() {
        return measuredBy;
    }

    @Override
    public int version() {
        return version == null ? 0 : version;
    }
}
