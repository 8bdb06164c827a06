package org.tallywright.estimates;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

/**
 * A job's estimate as it stands, with what is issued from it. Holds wages and prices: for the owner only.
 *
 * @param version of the rates and words, or null while they are the shop's usual ones
 * @param sheet all lines
 */
public record WorkingSum(
        @Nullable Integer version,
        EstimateRates rates,
        BidWords words,
        LabourRate labourRate,
        EstimateSheet sheet,
        List<EstimateSheet.BidRow> bids) {

    /** What the next bid would be priced from; empty where there are hours but no rate for them. */
    public Optional<PriceBasis> basis() {
        EstimateSheet next = sheet.next();
        Optional<Money> rate = labourRate.amount();
        if (rate.isEmpty() && !next.hours().isZero()) {
            return Optional.empty();
        }
        return Optional.of(new PriceBasis(
                next.hours(),
                rate.orElse(Money.ZERO),
                rates.overheadRate(),
                next.material(),
                next.other(),
                Contingency.named(rates.contingencyPercent()),
                rates.margin(),
                rates.roundingStep(),
                rates.taxPercent()));
    }

    public Optional<PriceSum> sum() {
        return basis().map(PriceSum::of);
    }
}
