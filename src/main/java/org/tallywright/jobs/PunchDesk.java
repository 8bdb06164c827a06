package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;

/** The punch list and the walk-through at the end. A closed job still takes punch list items. */
@Service
public class PunchDesk {
    private final JobGate gate;
    private final PunchItems items;
    private final Pieces pieces;
    private final JobHistory history;
    private final ShopClock clock;

    PunchDesk(JobGate gate, PunchItems items, Pieces pieces, JobHistory history, ShopClock clock) {
        this.gate = gate;
        this.items = items;
        this.pieces = pieces;
        this.history = history;
        this.clock = clock;
    }

    /** Raises an item; the same id with the same words is a repeat. */
    @Transactional
    public void raise(UUID jobId, UUID itemId, @Nullable UUID pieceId, String text, UUID by) {
        gate.hold(jobId, by);
        if (pieceId != null && !pieces.existsByIdAndJobId(pieceId, jobId)) {
            throw new Refused("piece", "Pick a piece of this job.");
        }
        PunchItem known = items.findById(itemId).orElse(null);
        if (known == null) {
            items.save(new PunchItem(itemId, jobId, pieceId, text, clock.today(), by));
        } else if (!known.jobId().equals(jobId)) {
            throw new NotHere("punch list item");
        } else if (!known.says(pieceId, text)) {
            throw new Stale("punch list item", beside(known, pieceId, text));
        }
    }

    private List<Stale.Row> beside(PunchItem known, @Nullable UUID pieceId, String text) {
        return List.of(
                new Stale.Row("Piece", piece(known.pieceId()), piece(pieceId)),
                new Stale.Row("What is to be put right", known.text(), text));
    }

    private String piece(@Nullable UUID id) {
        return id == null ? "" : pieces.findById(id).map(Piece::name).orElse("");
    }

    @Transactional
    public void done(UUID jobId, UUID itemId, UUID by) {
        gate.hold(jobId, by);
        find(jobId, itemId).done(clock.today(), by);
    }

    /** Takes back a tick. */
    @Transactional
    public void notDone(UUID jobId, UUID itemId, UUID by) {
        gate.hold(jobId, by);
        find(jobId, itemId).notDone();
    }

    /** @param name who signed: the client, or whoever looked at it for him */
    @Transactional
    public void signOff(UUID jobId, UUID itemId, String name, UUID by) {
        gate.hold(jobId, by);
        find(jobId, itemId).signOff(clock.today(), name);
    }

    private PunchItem find(UUID jobId, UUID itemId) {
        return items.findByIdAndJobId(itemId, jobId).orElseThrow(() -> new NotHere("punch list item"));
    }

    /**
     * The client was walked through the work.
     *
     * @param id made by the page, so that a repeat is one
     * @param note who was there and what was said
     */
    @Transactional
    public void walkThrough(UUID jobId, UUID id, LocalDate on, String note, UUID by) {
        gate.holdOpen(jobId, by);
        if (on.isAfter(clock.today())) {
            throw new Refused("walkedOn", "A walk-through cannot be recorded ahead.");
        }
        history.walkThrough(jobId, id, on, by, note);
    }
}
