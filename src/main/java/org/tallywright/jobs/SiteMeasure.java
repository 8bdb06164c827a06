package org.tallywright.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** A reading taken on site: what was measured, how long it is, by whom and when. */
@Entity
@Table(name = "site_measure")
public class SiteMeasure {
    @Id
    private UUID id;

    private UUID jobId;
    private @Nullable UUID pieceId;
    private String name;
    private Length length;
    private LocalDate measuredOn;
    private @Nullable UUID measuredBy;
    private String note;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected SiteMeasure() {}

    @SuppressWarnings("NullAway.Init")
    SiteMeasure(UUID id, UUID jobId, MeasureDetails details, UUID by) {
        this.id = id;
        this.jobId = jobId;
        change(details, by);
    }

    /** A changed reading is a new reading: it carries the name of the person who wrote it. */
    void change(MeasureDetails details, UUID by) {
        pieceId = details.pieceId();
        name = details.name();
        length = details.length();
        measuredOn = details.measuredOn();
        note = details.note();
        measuredBy = by;
    }

    public MeasureDetails details() {
        return new MeasureDetails(pieceId, name, length, measuredOn, note);
    }

    public UUID id() {
        return id;
    }

    public UUID jobId() {
        return jobId;
    }

    public int version() {
        return version == null ? 0 : version;
    }
}
