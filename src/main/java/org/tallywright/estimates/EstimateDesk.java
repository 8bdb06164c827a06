package org.tallywright.estimates;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;

/** Keeps the working sum of a job: its material lines, other costs, rates and words. Its tasks are the job's. */
@Service
public class EstimateDesk {
    private final JobDesk jobs;
    private final EstimateOpener opener;
    private final Estimates estimates;
    private final MaterialLines materials;
    private final OtherLines others;
    private final EstimateMaterials facts;
    private final LineLocks locks;
    private final ShopClock clock;

    EstimateDesk(
            JobDesk jobs,
            EstimateOpener opener,
            Estimates estimates,
            MaterialLines materials,
            OtherLines others,
            EstimateMaterials facts,
            LineLocks locks,
            ShopClock clock) {
        this.jobs = jobs;
        this.opener = opener;
        this.estimates = estimates;
        this.materials = materials;
        this.others = others;
        this.facts = facts;
        this.locks = locks;
        this.clock = clock;
    }

    /** Adds or changes a material line. The same id and figures again are a repeat; others need the version read. */
    @Transactional
    public void save(UUID job, MaterialDraft draft, UUID by) {
        jobs.holdOpen(job, by);
        opener.open(job);
        MaterialCost cost = cost(draft);
        locks.guardPiece(job, draft.pieceId());
        MaterialLine line = materials.findById(draft.id()).orElse(null);
        if (line == null) {
            MaterialLine fresh = new MaterialLine(
                    guardNew(draft.id(), draft.version(), "material line"), job, materials.lastPosition(job) + 1);
            fresh.say(draft.pieceId(), draft.materialId(), cost);
            materials.save(fresh);
        } else if (!line.isOf(job)) {
            throw new NotHere("material line");
        } else if (!line.says(draft.pieceId(), draft.materialId(), cost)) {
            guardVersion(line.isAt(draft.version()), "material line");
            locks.guardMaterial(draft.id(), clock.today());
            line.say(draft.pieceId(), draft.materialId(), cost);
        }
    }

    private MaterialCost cost(MaterialDraft draft) {
        EstimateMaterials.Facts material = facts.find(draft.materialId(), clock.today())
                .orElseThrow(() -> new Refused("material", "Pick a material of the catalogue."));
        if (draft.price() == null && material.price() == null) {
            throw new Refused("price", "The catalogue has no price for it yet; write what you expect to pay.");
        }
        MaterialCost cost = new MaterialCost(
                draft.net(),
                draft.yield() == null ? material.startingYield() : draft.yield(),
                material.purchaseStep(),
                draft.price() == null ? Objects.requireNonNull(material.price()) : draft.price(),
                draft.freight());
        Limits.check(cost);
        return cost;
    }

    /** Takes a line away; one that is gone already is a repeat. */
    @Transactional
    public void removeMaterial(UUID job, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        Optional<MaterialLine> line = materials.findById(id);
        if (line.isPresent()) {
            guardHere(line.get().isOf(job), "material line");
            locks.guardMaterial(id, clock.today());
            materials.delete(line.get());
        }
    }

    @Transactional
    public void save(UUID job, OtherDraft draft, UUID by) {
        jobs.holdOpen(job, by);
        opener.open(job);
        Limits.check("amount", draft.amount());
        OtherLine line = others.findById(draft.id()).orElse(null);
        if (line == null) {
            OtherLine fresh =
                    new OtherLine(guardNew(draft.id(), draft.version(), "cost"), job, others.lastPosition(job) + 1);
            fresh.say(draft.description(), draft.amount());
            others.save(fresh);
        } else if (!line.isOf(job)) {
            throw new NotHere("cost");
        } else if (!line.says(draft.description(), draft.amount())) {
            guardVersion(line.isAt(draft.version()), "cost");
            locks.guardOther(draft.id(), clock.today());
            line.say(draft.description(), draft.amount());
        }
    }

    @Transactional
    public void removeOther(UUID job, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        Optional<OtherLine> line = others.findById(id);
        if (line.isPresent()) {
            guardHere(line.get().isOf(job), "cost");
            locks.guardOther(id, clock.today());
            others.delete(line.get());
        }
    }

    /** @param seen the version the form was made from, or null where the job had no estimate of its own yet */
    @Transactional
    public void price(UUID job, @Nullable Integer seen, EstimateRates rates, UUID by) {
        jobs.holdOpen(job, by);
        Limits.check(rates);
        guardShares(rates);
        Estimate estimate = held(job, seen, e -> e.rates().equals(rates));
        if (!estimate.rates().equals(rates)) {
            estimate.price(rates);
        }
    }

    /** Keeps the words of the next bid without issuing it. */
    @Transactional
    public void word(UUID job, @Nullable Integer seen, BidWords words, UUID by) {
        jobs.holdOpen(job, by);
        Estimate estimate = held(job, seen, e -> e.words().equals(words));
        if (!estimate.words().equals(words)) {
            estimate.word(words);
        }
    }

    private Estimate held(UUID job, @Nullable Integer seen, Predicate<Estimate> repeated) {
        Optional<Estimate> there = estimates.findById(job);
        if (there.isPresent() && !repeated.test(there.get())) {
            guardVersion(there.get().isAt(seen), "estimate");
        }
        return there.orElseGet(() -> opener.open(job));
    }

    private static void guardShares(EstimateRates rates) {
        Percent all = Percent.of(
                rates.crew().stream().map(s -> s.sharePercent().amount()).reduce(BigDecimal.ZERO, BigDecimal::add));
        if (!rates.crew().isEmpty() && all.compareTo(Percent.of(100)) != 0) {
            throw new Refused("crew", "The shares add up to " + all + " %; make it 100.");
        }
    }

    private static UUID guardNew(UUID id, @Nullable Integer version, String what) {
        if (version != null) {
            throw new NotHere(what);
        }
        return id;
    }

    private static void guardVersion(boolean same, String what) {
        if (!same) {
            throw new Stale(what);
        }
    }

    private static void guardHere(boolean here, String what) {
        if (!here) {
            throw new NotHere(what);
        }
    }
}
