package org.tallywright.estimates.web;

import java.util.List;
import java.util.UUID;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.Bids;
import org.tallywright.jobs.TitleCell;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.SignedIn;
import org.tallywright.web.TitleBlock;

/** The bid in a job's title block, for the owner: what was agreed in all, or the offer that is out. */
@Component
@Order(10)
class BidCells implements TitleCell {
    private final Bids bids;
    private final ShopConventions shop;

    BidCells(Bids bids, ShopConventions shop) {
        this.bids = bids;
        this.shop = shop;
    }

    @Override
    public List<TitleBlock.Cell> cells(UUID job, SignedIn me) {
        if (!me.seesMoney()) {
            return List.of();
        }
        return bids
                .mark(job)
                .map(m -> new TitleBlock.Cell(m.words(), shop.money().format(m.price()), "/bids/" + m.bid() + "/sums"))
                .stream()
                .toList();
    }
}
