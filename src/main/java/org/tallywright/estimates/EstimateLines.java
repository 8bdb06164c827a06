package org.tallywright.estimates;

import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Yield;

/**
 * Keeps the material lines and other costs of a job's working sum. The same id and content again is a repeat; other
 * content needs the version that was read.
 */
@Service
public class EstimateLines {
    private static final String MATERIAL = "material line";
    private static final String OTHER = "cost";

    private final JobDesk jobs;
    private final EstimateOpener opener;
    private final MaterialLines materials;
    private final OtherLines others;
    private final EstimateMaterials catalogue;
    private final LineLocks locks;
    private final ShopClock clock;

    EstimateLines(
            JobDesk jobs,
            EstimateOpener opener,
            MaterialLines materials,
            OtherLines others,
            EstimateMaterials catalogue,
            LineLocks locks,
            ShopClock clock) {
        this.jobs = jobs;
        this.opener = opener;
        this.materials = materials;
        this.others = others;
        this.catalogue = catalogue;
        this.locks = locks;
        this.clock = clock;
    }

    @Transactional
    public void save(UUID job, MaterialDraft draft, UUID by) {
        jobs.holdOpen(job, by);
        opener.open(job);
        EstimateMaterials.Facts material = catalogue
                .find(draft.materialId(), clock.today())
                .orElseThrow(() -> new Refused("material", "Pick a material of the catalogue."));
        locks.guardPiece(job, draft.pieceId());
        MaterialLine line = materials.findById(draft.id()).orElse(null);
        MaterialLine.Content content = content(draft, material, line);
        if (line == null) {
            guardNew(draft.version(), MATERIAL);
            MaterialLine fresh = new MaterialLine(draft.id(), job, materials.lastPosition(job) + 1);
            fresh.say(content);
            materials.save(fresh);
            return;
        }
        guardOf(line.isOf(job), MATERIAL);
        if (!line.says(content)) {
            if (!line.isAt(draft.version())) {
                throw new Stale(MATERIAL, line.beside(name(line.materialId()), material.name(), content.cost()));
            }
            locks.guardMaterial(draft.id(), clock.today());
            line.say(content);
        }
    }

    private static MaterialLine.Content content(
            MaterialDraft draft, EstimateMaterials.Facts material, @Nullable MaterialLine line) {
        Yield share = draft.yield() == null ? material.startingYield() : draft.yield();
        return new MaterialLine.Content(
                draft.pieceId(),
                draft.materialId(),
                cost(draft, share, material, line == null ? null : line.laidOutFor(draft, share)),
                line == null ? draft.price() != null : line.typed(draft),
                line == null ? Quantity.ZERO : line.stockFor(draft, share));
    }

    private static MaterialCost cost(
            MaterialDraft draft, Yield share, EstimateMaterials.Facts material, @Nullable LaidOut laidOut) {
        if (draft.price() == null && material.price() == null) {
            throw new Refused("price", "The catalogue has no price for it yet; write what you expect to pay.");
        }
        MaterialCost cost = new MaterialCost(
                draft.net(),
                share,
                material.purchaseStep(),
                draft.price() == null ? Objects.requireNonNull(material.price()) : draft.price(),
                draft.freight(),
                laidOut);
        Limits.check(cost);
        return cost;
    }

    private String name(UUID material) {
        return catalogue
                .find(material, clock.today())
                .map(EstimateMaterials.Facts::name)
                .orElse("");
    }

    /** @throws NotHere where the job has no such line, gone already or never there */
    @Transactional
    public void removeMaterial(UUID job, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        MaterialLine line = materials.findById(id).orElseThrow(() -> new NotHere(MATERIAL));
        guardOf(line.isOf(job), MATERIAL);
        locks.guardMaterial(id, clock.today());
        materials.delete(line);
    }

    @Transactional
    public void save(UUID job, OtherDraft draft, UUID by) {
        jobs.holdOpen(job, by);
        opener.open(job);
        Limits.check("amount", draft.amount());
        OtherLine line = others.findById(draft.id()).orElse(null);
        if (line == null) {
            guardNew(draft.version(), OTHER);
            OtherLine fresh = new OtherLine(draft.id(), job, others.lastPosition(job) + 1);
            fresh.say(draft);
            others.save(fresh);
            return;
        }
        guardOf(line.isOf(job), OTHER);
        if (!line.says(draft)) {
            if (!line.isAt(draft.version())) {
                throw new Stale(OTHER, line.beside(draft));
            }
            locks.guardOther(draft.id(), clock.today());
            line.say(draft);
        }
    }

    @Transactional
    public void removeOther(UUID job, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        OtherLine line = others.findById(id).orElseThrow(() -> new NotHere(OTHER));
        guardOf(line.isOf(job), OTHER);
        locks.guardOther(id, clock.today());
        others.delete(line);
    }

    /** A form with a version that finds no line was made from one that has been removed since. */
    private static void guardNew(@Nullable Integer version, String what) {
        if (version != null) {
            throw new NotHere(what);
        }
    }

    private static void guardOf(boolean ofThisJob, String what) {
        if (!ofThisJob) {
            throw new NotHere(what);
        }
    }
}
