package org.tallywright.past;

import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.PlanEraser;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.takeoff.TakeoffCopy;
import org.tallywright.takeoff.TypedTakeoff;

/** Takes a copy out of a job again, all or nothing. */
@Service
public class CopyRemoval {
    private final JobDesk jobs;
    private final EstimateLines lines;
    private final TakeoffCopy takeoff;
    private final PlanEraser eraser;
    private final Copies copies;
    private final CopyHolders holders;
    private final CopiedTakeoffs takeoffs;
    private final EntityManager entities;

    CopyRemoval(
            JobDesk jobs,
            EstimateLines lines,
            TakeoffCopy takeoff,
            PlanEraser eraser,
            Copies copies,
            CopyHolders holders,
            CopiedTakeoffs takeoffs,
            EntityManager entities) {
        this.jobs = jobs;
        this.lines = lines;
        this.takeoff = takeoff;
        this.eraser = eraser;
        this.copies = copies;
        this.holders = holders;
        this.takeoffs = takeoffs;
        this.entities = entities;
    }

    /**
     * Takes everything that came in by one copy out again, changed since or not; what is gone already is a repeat.
     *
     * @param seesMoney whether he may see, and so take out, other costs
     * @throws Refused where a bid or an option holds a line, a task was begun, hours were logged, parts or answers were typed,
     *     or something else was added to it
     * @throws NotHere for a copy that is in another job
     */
    @Transactional
    public void takeOut(UUID job, UUID copy, UUID by, boolean seesMoney) {
        jobs.holdOpen(job, by);
        UUID known = copies.jobOf(copy).orElse(null);
        if (known == null) {
            return;
        }
        if (!known.equals(job)) {
            throw new NotHere("copy");
        }
        List<Copies.Held> held = copies.linesOf(copy);
        if (!seesMoney && !of(held, Copies.Sort.OTHER).isEmpty()) {
            throw new Refused("Other costs came with this copy, so only an owner takes it out.");
        }
        holders.guard(copy);
        of(held, Copies.Sort.MATERIAL).forEach(line -> lines.removeMaterial(job, line, by));
        of(held, Copies.Sort.OTHER).forEach(line -> lines.removeOther(job, line, by));
        entities.flush();
        Map<UUID, TypedTakeoff> came = takeoffs.of(copy);
        of(held, Copies.Sort.PIECE)
                .forEach(piece -> takeoff.clear(job, piece, came.getOrDefault(piece, TypedTakeoff.NOTHING), by));
        eraser.erase(job, of(held, Copies.Sort.TASK), of(held, Copies.Sort.PIECE), by);
        copies.remove(copy);
    }

    private static List<UUID> of(List<Copies.Held> held, Copies.Sort sort) {
        return held.stream()
                .filter(one -> one.sort() == sort)
                .map(Copies.Held::id)
                .toList();
    }
}
