package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.BuyListLine;
import org.tallywright.estimates.BuyListLines;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.EstimateSheet.MaterialRow;
import org.tallywright.materials.PaidPrices;
import org.tallywright.shared.ShopClock;

/**
 * Puts what the buy list costs the job into the material lines of the estimate: one line for each material. Done again, it
 * brings the same lines up to date. A line that is agreed, offered in a change order or put into an option stays as it is; what
 * is needed beyond it goes on a line of its own.
 */
@Service
public class BuyLinesToEstimate {
    private final BuyLister lister;
    private final BuyListLines lines;
    private final EstimateLines estimate;
    private final EstimatePricer sheets;
    private final PaidPrices paid;
    private final ShopClock clock;

    BuyLinesToEstimate(
            BuyLister lister,
            BuyListLines lines,
            EstimateLines estimate,
            EstimatePricer sheets,
            PaidPrices paid,
            ShopClock clock) {
        this.lister = lister;
        this.lines = lines;
        this.estimate = estimate;
        this.sheets = sheets;
        this.paid = paid;
        this.clock = clock;
    }

    /**
     * @param lines how many were put there
     * @param twice materials that another line of the estimate names as well, which may count them twice
     * @param agreed materials of which no more is needed than is agreed, offered or in an option
     * @param stale pieces whose parts were taken off before a size, a setting or a formula changed
     * @param unpriced materials without any price, which were left out
     */
    public record Put(int lines, List<String> twice, List<String> agreed, List<String> unpriced, List<String> stale) {}

    @Transactional
    public Put put(UUID job, UUID by) {
        EstimateSheet sheet = sheets.sheet(job);
        List<MaterialRow> there = sheet.materials();
        BuyList list = lister.of(job);
        List<String> stale = list.stale().stream().map(PieceFacts.Fact::name).toList();
        Put put = new Put(0, new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), stale);
        Set<UUID> cut = new HashSet<>();
        Set<UUID> kept = new HashSet<>();
        for (BuyLine buy : list.lines()) {
            UUID material = buy.material().id();
            BuyChain chain = BuyChain.of(job, material, cut.add(material) ? "" : "/supply", sheet);
            BuyListLine wanted = chain.wanted(buy.material(), buy.charge());
            if (wanted == null) {
                if (!chain.held().isEmpty()) {
                    put.agreed().add(buy.material().name());
                }
            } else if (follow(job, wanted, by)) {
                kept.add(wanted.id());
                if (isElsewhere(job, material, there)) {
                    put.twice().add(buy.material().name());
                }
            } else {
                put.unpriced().add(buy.material().name());
            }
        }
        for (MaterialRow row : there) {
            if (BuyChain.follows(row) && !kept.contains(row.id()) && BuyChain.isOurs(job, row, there.size())) {
                // No part needs it any more.
                estimate.removeMaterial(job, row.id(), by);
            }
        }
        return new Put(kept.size(), put.twice(), put.agreed(), put.unpriced(), stale);
    }

    /** Stock is charged at what was last paid where the catalogue has no price; so is the line. */
    private boolean follow(UUID job, BuyListLine wanted, UUID by) {
        return lines.follow(job, wanted, by)
                || paid.lastUpTo(wanted.material(), clock.today())
                        .map(price -> lines.follow(job, wanted.at(price), by))
                        .orElse(false);
    }

    private static boolean isElsewhere(UUID job, UUID material, List<MaterialRow> there) {
        return there.stream()
                .anyMatch(row -> row.materialId().equals(material) && !BuyChain.isOurs(job, row, there.size()));
    }
}
