package org.tallywright.materials;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.data.repository.CrudRepository;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Keeps what comes and goes. A closed job takes none of it; the same id with the same content is a repeat. */
@Service
@Transactional
public class StoreRoom {
    private final Purchases purchases;
    private final MaterialUses uses;
    private final MaterialReturns returns;
    private final Offcuts offcuts;
    private final Materials catalog;
    private final PaidPrices paid;
    private final OnJob onJob;
    private final MovementWords words;
    private final JobDesk jobs;
    private final SaveTurn turn;
    private final Trail trail;

    StoreRoom(
            Purchases purchases,
            MaterialUses uses,
            MaterialReturns returns,
            Offcuts offcuts,
            Materials catalog,
            PaidPrices paid,
            OnJob onJob,
            MovementWords words,
            JobDesk jobs,
            SaveTurn turn,
            Trail trail) {
        this.purchases = purchases;
        this.uses = uses;
        this.returns = returns;
        this.offcuts = offcuts;
        this.catalog = catalog;
        this.paid = paid;
        this.onJob = onJob;
        this.words = words;
        this.jobs = jobs;
        this.turn = turn;
        this.trail = trail;
    }

    /**
     * @param version the version an edit was read at; null for a new entry
     * @throws Stale when somebody changed the entry since
     * @throws Refused for a closed job, a material that is not in the catalogue, or more sent back or kept than came
     */
    public void save(UUID id, @Nullable Integer version, MovementDraft draft, SignedIn by) {
        trail.by(by.personId());
        turn.of(id);
        checkMaterial(draft.materialId());
        Optional<? extends Movement> there = rows(draft.kind()).findById(id);
        if (there.isPresent()) {
            correct(there.get(), version, draft, by);
            return;
        }
        if (version != null) {
            throw new NotHere(draft.kind().word());
        }
        holdOpen(draft.jobId(), by);
        onJob.guard(draft, null);
        add(id, draft, by.personId());
    }

    /** All of them or none, each as {@link #save}; in the order of their ids, so that two such saves cannot wait for each other. */
    public void saveAll(Map<UUID, MovementDraft> drafts, SignedIn by) {
        new TreeMap<>(drafts).forEach((id, draft) -> save(id, null, draft, by));
    }

    private void add(UUID id, MovementDraft draft, UUID by) {
        if (draft instanceof MovementDraft.Bought bought) {
            purchases.save(new Purchase(id, bought, by));
        } else if (draft instanceof MovementDraft.Taken taken) {
            uses.save(new MaterialUse(id, taken, stockPrice(taken), by));
        } else if (draft instanceof MovementDraft.SentBack sent) {
            returns.save(new MaterialReturn(id, sent, by));
        } else if (draft instanceof MovementDraft.Kept kept) {
            offcuts.save(new Offcut(id, kept, by));
        }
    }

    private void correct(Movement there, @Nullable Integer version, MovementDraft draft, SignedIn by) {
        if (there.draft().equals(draft)) {
            return;
        }
        // A helper enters what he takes; corrections are for those who may see the entry again.
        if (version == null || version != there.version() || by.is(Role.HELPER)) {
            throw new Stale(draft.kind().word(), words.beside(there.draft(), draft));
        }
        holdOpen(there.jobId(), by);
        holdOpen(draft.jobId(), by);
        onJob.guard(draft, there.draft());
        if (there instanceof MaterialUse use
                && draft instanceof MovementDraft.Taken taken
                && repriced(there.draft(), taken)) {
            use.price(stockPrice(taken));
        }
        there.correct(draft);
    }

    /** What was taken keeps its price when only its net, quantity or note is corrected. */
    private static boolean repriced(MovementDraft was, MovementDraft.Taken now) {
        return !(was instanceof MovementDraft.Taken taken
                && taken.fromStock() == now.fromStock()
                && taken.materialId().equals(now.materialId())
                && taken.on().equals(now.on()));
    }

    public void remove(Kind kind, UUID id, SignedIn by) {
        trail.by(by.personId());
        Movement there = rows(kind).findById(id).orElseThrow(() -> new NotHere(kind.word()));
        holdOpen(there.jobId(), by);
        CrudRepository<? extends Movement, UUID> rows = rows(kind);
        rows.deleteById(id);
    }

    /** The offcut was used up or thrown away on that day, whatever became of its job; said again, the first day stays. */
    public void offcutGone(UUID id, LocalDate on, SignedIn by) {
        trail.by(by.personId());
        turn.of(id);
        Offcut offcut = offcuts.findById(id).orElseThrow(() -> new NotHere("offcut"));
        if (!offcut.isGone()) {
            offcut.gone(on);
        }
    }

    /** @throws NotHere for an unknown id */
    @Transactional(readOnly = true)
    public Found find(Kind kind, UUID id) {
        Movement there = rows(kind).findById(id).orElseThrow(() -> new NotHere(kind.word()));
        return new Found(there.draft(), there.version());
    }

    /** An entry and the version it was read at. */
    public record Found(MovementDraft draft, int version) {}

    private CrudRepository<? extends Movement, UUID> rows(Kind kind) {
        return switch (kind) {
            case PURCHASES -> purchases;
            case USES -> uses;
            case RETURNS -> returns;
            case OFFCUTS -> offcuts;
        };
    }

    /** What the stock cost on the day it was taken: the catalogue's price in force, else what was last paid, else 0. */
    private @Nullable UnitPrice stockPrice(MovementDraft.Taken taken) {
        return taken.fromStock()
                ? catalog.priceOn(taken.materialId(), taken.on())
                        .or(() -> paid.lastUpTo(taken.materialId(), taken.on()))
                        .orElse(UnitPrice.ZERO)
                : null;
    }

    private void checkMaterial(UUID material) {
        if (catalog.find(material).isEmpty()) {
            throw new Refused("material", "Choose a material from the list.");
        }
    }

    private void holdOpen(@Nullable UUID job, SignedIn by) {
        if (job != null) {
            jobs.holdOpen(job, by.personId());
        }
    }

    /** Who may enter what: prices are for owner and lead, taking material is for everybody who works. */
    public static boolean mayEnter(Kind kind, SignedIn me) {
        return me.is(Role.OWNER, Role.LEAD) || (kind == Kind.USES && me.is(Role.HELPER));
    }
}
