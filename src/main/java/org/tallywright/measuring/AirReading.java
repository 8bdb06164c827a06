package org.tallywright.measuring;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Temperature and humidity at the site, as read on a day. */
@Entity
class AirReading implements OfJob<AirDetails> {
    @Id
    private UUID id;

    private UUID jobId;
    private String place;
    private LocalDate takenOn;
    private @Nullable UUID takenBy;
    private BigDecimal celsius;
    private BigDecimal humidity;
    private String note;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected AirReading() {}

    @SuppressWarnings("NullAway.Init")
    AirReading(UUID id, UUID jobId, AirDetails details, UUID by) {
        this.id = id;
        this.jobId = jobId;
        change(details, by);
    }

    @Override
    public final void change(AirDetails details, UUID by) {
        place = details.place();
        takenOn = details.takenOn();
        takenBy = by;
        celsius = details.celsius();
        humidity = details.humidity();
        note = details.note();
    }

    @Override
    public AirDetails details() {
        return new AirDetails(place, takenOn, celsius, humidity, note);
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
    UUID takenBy() {
        return takenBy;
    }

    @Override
    public int version() {
        return version == null ? 0 : version;
    }
}
