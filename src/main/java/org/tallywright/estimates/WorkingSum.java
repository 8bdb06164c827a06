package org.tallywright.estimates;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.UnitPrice;

/**
 * A job's estimate as it stands, with what is issued from it. Holds wages and prices: for the owner only.
 *
 * @param version of the rates and words, or null while they are the shop's usual ones
 * @param sheet all lines
 * @param said of the hours of what would be offered next; null where it has no task
 */
public record WorkingSum(
        @Nullable Integer version,
        EstimateRates rates,
        BidWords words,
        LabourRate labourRate,
        EstimateSheet sheet,
        List<EstimateSheet.BidRow> bids,
        @Nullable HoursSaid said) {

    /** What the next bid would be priced from; empty where there are hours but no rate for them. */
    public Optional<PriceBasis> basis() {
        EstimateSheet next = sheet.next();
        Optional<Money> rate = labourRate.amount();
        if (rate.isEmpty() && !next.hours().isZero()) {
            return Optional.empty();
        }
        Money each = rate.orElse(Money.ZERO);
        return Optional.of(new PriceBasis(
                next.hours(),
                each,
                rates.overheadRate(),
                next.material(),
                next.other(),
                contingency(next, each),
                rates.margin(),
                rates.roundingStep(),
                rates.taxPercent()));
    }

    /** At a chosen confidence: the cost at the hours that are not passed at it, material and other costs as estimated. */
    private Contingency contingency(EstimateSheet next, Money rate) {
        if (said == null || said.confidence() == null) {
            return Contingency.named(rates.contingencyPercent());
        }
        Hours hours = said.total().under(said.confidence());
        Money cost = UnitPrice.of(rate)
                .times(hours)
                .plus(UnitPrice.of(rates.overheadRate()).times(hours))
                .plus(next.material())
                .plus(next.other());
        return Contingency.upTo(cost);
    }

    /** The rates as a bid keeps them: a contingency from a chosen confidence is named by it, with the percentage it came to. */
    public EstimateRates offered() {
        if (said == null || said.confidence() == null) {
            return rates;
        }
        BigDecimal share = sum().filter(sum -> sum.cost().isPositive())
                .map(sum -> sum.contingency()
                        .amount()
                        .multiply(BigDecimal.valueOf(100))
                        .divide(sum.cost().amount(), 3, RoundingMode.HALF_UP))
                .orElse(BigDecimal.ZERO);
        return new EstimateRates(
                rates.labourRate(),
                rates.crew(),
                rates.overheadRate(),
                Percent.of(share),
                "P" + said.confidence() + ", up to " + said.total().under(said.confidence()),
                rates.margin(),
                rates.roundingStep(),
                rates.taxPercent());
    }

    public Optional<PriceSum> sum() {
        return basis().map(PriceSum::of);
    }
}
