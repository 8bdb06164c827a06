package org.tallywright.costing;

import java.util.List;
import java.util.UUID;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.TitleCell;
import org.tallywright.shared.Money;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;
import org.tallywright.web.TitleBlock;

/** What a running or closed job leaves, in its title block; for the owner. */
@Component
@Order(50)
class MarginCell implements TitleCell {
    private final Reviews reviews;
    private final ShopConventions conventions;

    MarginCell(Reviews reviews, ShopConventions conventions) {
        this.reviews = reviews;
        this.conventions = conventions;
    }

    @Override
    public List<TitleBlock.Cell> cells(UUID jobId, SignedIn me) {
        if (!me.is(Role.OWNER)) {
            return List.of();
        }
        Reviews.Standing job = reviews.standing(jobId);
        return job.sums()
                .flatMap(CostSums::margin)
                .map(margin -> List.of(new TitleBlock.Cell(
                        job.state().equals("closed") ? "Margin" : "Margin now",
                        conventions.money().format(Money.of(margin)),
                        "/jobs/" + job.number() + "/review")))
                .orElse(List.of());
    }
}
