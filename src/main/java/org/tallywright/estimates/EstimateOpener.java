package org.tallywright.estimates;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shop.Shop;
import org.tallywright.shop.ShopSettings;

/** What an estimate starts from: the shop's usual rates, the owner alone as the crew, the shop's usual terms. */
@Component
class EstimateOpener {
    private final JdbcClient jdbc;
    private final ShopSettings settings;
    private final Estimates estimates;

    EstimateOpener(JdbcClient jdbc, ShopSettings settings, Estimates estimates) {
        this.jdbc = jdbc;
        this.settings = settings;
        this.estimates = estimates;
    }

    EstimateRates usualRates() {
        Shop shop = settings.current();
        return new EstimateRates(
                null,
                ownerAlone(),
                Money.of(shop.overheadRate()),
                Percent.of(shop.contingencyPercent()),
                "",
                Margin.of(shop.marginPercent()),
                Money.of(shop.roundingStep()),
                Percent.of(shop.taxPercent()));
    }

    BidWords usualWords() {
        return new BidWords(
                "", "", settings.current().payments().plan(), settings.current().bidTerms());
    }

    /** The job's estimate, made if it is not there. The caller holds the job, so that two cannot make it at once. */
    Estimate open(UUID job) {
        return estimates.findById(job).orElseGet(() -> estimates.save(new Estimate(job, usualRates(), usualWords())));
    }

    private List<CrewShare> ownerAlone() {
        return jdbc
                .sql("select id from person where role = 'owner' and active order by created_at, id limit 1")
                .query(UUID.class)
                .optional()
                .stream()
                .map(owner -> new CrewShare(owner, Percent.of(100)))
                .toList();
    }
}
