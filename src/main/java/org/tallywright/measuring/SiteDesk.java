package org.tallywright.measuring;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;

/**
 * Keeps what was measured at the site of a job. The same id with the same content is a repeat; an edit needs the version
 * it was read at. A closed job takes none of it.
 */
@Service
@Transactional
public class SiteDesk {
    private final JobDesk jobs;
    private final Openings openings;
    private final AirReadings air;
    private final SolidParts parts;
    private final JdbcClient jdbc;
    private final ShopClock clock;

    SiteDesk(JobDesk jobs, Openings openings, AirReadings air, SolidParts parts, JdbcClient jdbc, ShopClock clock) {
        this.jobs = jobs;
        this.openings = openings;
        this.air = air;
        this.parts = parts;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Something kept, with the version it was read at. */
    public record Kept<D>(
            UUID id, D details, int version, @Nullable UUID by) {}

    public void save(UUID job, UUID id, @Nullable Integer version, OpeningDetails details, UUID by) {
        jobs.holdOpen(job, by);
        guardPiece(job, details.pieceId());
        if (details.measuredOn().isAfter(clock.today())) {
            throw new Refused("measuredOn", "A measure cannot be taken in the future.");
        }
        keep(openings, "opening", job, id, version, details, by, (d, own) -> new Opening(own, job, d, by));
    }

    public void save(UUID job, UUID id, @Nullable Integer version, AirDetails details, UUID by) {
        jobs.holdOpen(job, by);
        if (details.takenOn().isAfter(clock.today())) {
            throw new Refused("takenOn", "The air cannot be read in the future.");
        }
        keep(air, "reading of the air", job, id, version, details, by, (d, own) -> new AirReading(own, job, d, by));
    }

    public void save(UUID job, UUID id, @Nullable Integer version, PartDetails details, UUID by) {
        jobs.holdOpen(job, by);
        guardPiece(job, details.pieceId());
        keep(parts, "solid part", job, id, version, details, by, (d, own) -> new SolidPart(own, job, d, by));
    }

    private static <D, E extends OfJob<D>> void keep(
            JpaRepository<E, UUID> rows,
            String what,
            UUID job,
            UUID id,
            @Nullable Integer version,
            D details,
            UUID by,
            BiFunction<D, UUID, E> made) {
        Optional<E> known = rows.findById(id);
        if (known.isEmpty()) {
            if (version != null) {
                throw new NotHere(what);
            }
            rows.saveAndFlush(made.apply(details, id));
            return;
        }
        E kept = known.get();
        if (!kept.jobId().equals(job)) {
            throw new NotHere(what);
        }
        if (!kept.details().equals(details)) {
            if (version == null || version != kept.version()) {
                throw new Stale(what);
            }
            kept.change(details, by);
            rows.flush();
        }
    }

    private void guardPiece(UUID job, @Nullable UUID piece) {
        if (piece != null
                && jdbc.sql("select 1 from piece where id = ? and job_id = ?")
                        .params(piece, job)
                        .query()
                        .listOfRows()
                        .isEmpty()) {
            throw new Refused("piece", "Pick a piece of this job.");
        }
    }

    public void removeOpening(UUID job, UUID id, UUID by) {
        remove(openings, "opening", job, id, by);
    }

    public void removeAir(UUID job, UUID id, UUID by) {
        remove(air, "reading of the air", job, id, by);
    }

    public void removePart(UUID job, UUID id, UUID by) {
        remove(parts, "solid part", job, id, by);
    }

    private <E extends OfJob<?>> void remove(JpaRepository<E, UUID> rows, String what, UUID job, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        rows.delete(own(rows, what, job, id));
    }

    private static <E extends OfJob<?>> E own(JpaRepository<E, UUID> rows, String what, UUID job, UUID id) {
        return rows.findById(id).filter(row -> row.jobId().equals(job)).orElseThrow(() -> new NotHere(what));
    }

    @Transactional(readOnly = true)
    public Kept<OpeningDetails> opening(UUID job, UUID id) {
        return kept(own(openings, "opening", job, id));
    }

    @Transactional(readOnly = true)
    public Kept<AirDetails> air(UUID job, UUID id) {
        return kept(own(air, "reading of the air", job, id));
    }

    @Transactional(readOnly = true)
    public Kept<PartDetails> part(UUID job, UUID id) {
        SolidPart part = own(parts, "solid part", job, id);
        return new Kept<>(part.id(), part.details(), part.version(), null);
    }

    @Transactional(readOnly = true)
    public List<Kept<OpeningDetails>> openings(UUID job) {
        return openings.findByJobIdOrderByMeasuredOnAscPlaceAscId(job).stream()
                .map(SiteDesk::kept)
                .toList();
    }

    /** The oldest first. */
    @Transactional(readOnly = true)
    public List<Kept<AirDetails>> airs(UUID job) {
        return air.findByJobIdOrderByTakenOnAscId(job).stream()
                .map(SiteDesk::kept)
                .toList();
    }

    @Transactional(readOnly = true)
    public List<Kept<PartDetails>> parts(UUID job) {
        return parts.findByJobIdOrderByNameAscId(job).stream()
                .map(p -> new Kept<>(p.id(), p.details(), p.version(), null))
                .toList();
    }

    private static Kept<OpeningDetails> kept(Opening row) {
        return new Kept<>(row.id(), row.details(), row.version(), row.measuredBy());
    }

    private static Kept<AirDetails> kept(AirReading row) {
        return new Kept<>(row.id(), row.details(), row.version(), row.takenBy());
    }
}
