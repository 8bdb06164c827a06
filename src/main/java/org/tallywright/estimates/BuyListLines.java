package org.tallywright.estimates;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/** Keeps the material lines that follow the buy list. A price, freight or piece that somebody wrote there stays. */
@Service
public class BuyListLines {
    private static final BigDecimal LEAST_YIELD = new BigDecimal("0.0001");

    private final JobDesk jobs;
    private final EstimateOpener opener;
    private final MaterialLines lines;
    private final EstimateMaterials catalogue;
    private final LineLocks locks;
    private final ShopClock clock;

    BuyListLines(
            JobDesk jobs,
            EstimateOpener opener,
            MaterialLines lines,
            EstimateMaterials catalogue,
            LineLocks locks,
            ShopClock clock) {
        this.jobs = jobs;
        this.opener = opener;
        this.lines = lines;
        this.catalogue = catalogue;
        this.locks = locks;
        this.clock = clock;
    }

    /**
     * @return false where no price is known: then nothing is kept
     * @throws Refused for a line in an accepted bid or in a change order that is out
     */
    @Transactional
    public boolean follow(UUID job, BuyListLine wanted, UUID by) {
        jobs.holdOpen(job, by);
        EstimateMaterials.Facts material =
                catalogue.find(wanted.material(), clock.today()).orElseThrow(() -> new NotHere("material"));
        MaterialLine line = lines.findById(wanted.id()).orElse(null);
        UnitPrice typed = line == null ? null : line.typedPrice();
        UnitPrice price = typed != null ? typed : material.price() != null ? material.price() : wanted.paid();
        if (price == null) {
            return false;
        }
        MaterialCost cost = new MaterialCost(
                wanted.net(),
                share(wanted, material),
                material.purchaseStep(),
                price,
                line == null ? Money.ZERO : line.freight(),
                wanted.laidOut());
        Limits.check(cost);
        keep(job, line, wanted, cost, typed != null);
        return true;
    }

    private void keep(UUID job, @Nullable MaterialLine line, BuyListLine wanted, MaterialCost cost, boolean typed) {
        UUID piece = line == null ? null : line.pieceId();
        MaterialLine.Content content = new MaterialLine.Content(piece, wanted.material(), cost, typed, wanted.stock());
        if (line == null) {
            opener.open(job);
            MaterialLine fresh = new MaterialLine(wanted.id(), job, lines.lastPosition(job) + 1);
            fresh.say(content);
            lines.save(fresh);
        } else if (!line.says(content)) {
            locks.guardMaterial(line.id(), clock.today());
            line.say(content);
        }
    }

    /** Of a layout, what it leaves in the work; shown beside the purchase, which does not come from it. */
    private static Yield share(BuyListLine wanted, EstimateMaterials.Facts material) {
        LaidOut laidOut = wanted.laidOut();
        if (laidOut == null) {
            return material.startingYield();
        }
        Quantity net = wanted.net().quantity();
        BigDecimal share = net.amount().divide(laidOut.likely().amount(), 4, RoundingMode.HALF_UP);
        return Yield.of(share.min(BigDecimal.ONE).max(LEAST_YIELD));
    }
}
