package org.tallywright.jobs;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;

/** Keeps the pieces of a job and what was measured on site. */
@Service
public class PieceDesk {
    private final JobGate gate;
    private final Pieces pieces;
    private final SiteMeasures measures;
    private final KindFacts kinds;
    private final ShopClock clock;

    PieceDesk(JobGate gate, Pieces pieces, SiteMeasures measures, KindFacts kinds, ShopClock clock) {
        this.gate = gate;
        this.pieces = pieces;
        this.measures = measures;
        this.kinds = kinds;
        this.clock = clock;
    }

    /** Adds a piece, or changes it; see {@link TaskDesk#save} for ids and versions. */
    @Transactional
    public Piece save(UUID jobId, UUID pieceId, @Nullable Integer version, PieceDetails details, UUID by) {
        gate.holdOpen(jobId, by);
        if (details.pieceKindId() != null && !kinds.pieceKindExists(details.pieceKindId())) {
            throw new Refused("kind", "Pick a kind of piece of the catalogue.");
        }
        Piece known = pieces.findById(pieceId).orElse(null);
        if (known == null) {
            guardNew(version, "piece");
            return pieces.save(new Piece(pieceId, jobId, details, pieces.lastPosition(jobId) + 1));
        }
        guardOwner(known.jobId(), jobId, "piece");
        if (!known.details().equals(details)) {
            guardVersion(version, known.version(), "piece");
            known.change(details);
        }
        return known;
    }

    /** Only a piece that nothing refers to goes; one with tasks or measures is part of the record. */
    @Transactional
    public void remove(UUID jobId, UUID pieceId, UUID by) {
        gate.holdOpen(jobId, by);
        Piece piece = pieces.findByIdAndJobId(pieceId, jobId).orElseThrow(() -> new NotHere("piece"));
        try {
            pieces.delete(piece);
            pieces.flush();
        } catch (DataIntegrityViolationException e) {
            throw new Refused("This piece has parts, tasks, measures or lines of the estimate, so it stays.");
        }
    }

    @Transactional
    public SiteMeasure measure(UUID jobId, UUID measureId, @Nullable Integer version, MeasureDetails details, UUID by) {
        gate.holdOpen(jobId, by);
        guardMeasure(jobId, details);
        SiteMeasure known = measures.findById(measureId).orElse(null);
        if (known == null) {
            guardNew(version, "measure");
            return measures.save(new SiteMeasure(measureId, jobId, details, by));
        }
        guardOwner(known.jobId(), jobId, "measure");
        if (!known.details().equals(details)) {
            guardVersion(version, known.version(), "measure");
            known.change(details, by);
        }
        return known;
    }

    private void guardMeasure(UUID jobId, MeasureDetails details) {
        if (details.pieceId() != null && !pieces.existsByIdAndJobId(details.pieceId(), jobId)) {
            throw new Refused("piece", "Pick a piece of this job.");
        }
        if (details.measuredOn().isAfter(clock.today())) {
            throw new Refused("measuredOn", "A measure cannot be taken in the future.");
        }
    }

    @Transactional
    public void removeMeasure(UUID jobId, UUID measureId, UUID by) {
        gate.holdOpen(jobId, by);
        measures.delete(measures.findByIdAndJobId(measureId, jobId).orElseThrow(() -> new NotHere("measure")));
    }

    private static void guardNew(@Nullable Integer version, String what) {
        if (version != null) {
            throw new NotHere(what);
        }
    }

    private static void guardOwner(UUID ownerId, UUID jobId, String what) {
        if (!ownerId.equals(jobId)) {
            throw new NotHere(what);
        }
    }

    private static void guardVersion(@Nullable Integer read, int now, String what) {
        if (read == null || read != now) {
            throw new Stale(what);
        }
    }
}
