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
 * @param cost of the same, hours and material together; null where it has no task or no rate
 * @param options that would be offered with it, each with its own lines; those without a line are left out
 */
public record WorkingSum(
        @Nullable Integer version,
        EstimateRates rates,
        BidWords words,
        LabourRate labourRate,
        EstimateSheet sheet,
        List<EstimateSheet.BidRow> bids,
        @Nullable HoursSaid said,
        @Nullable CostSaid cost,
        List<OptionSum> options) {

    /** The confidence that the price is made at; empty for the named percentage. */
    public Optional<Integer> confidence() {
        return said == null || cost == null ? Optional.empty() : Optional.ofNullable(said.confidence());
    }

    /**
     * What the next bid would be priced from; empty where there are hours but no rate for them. At a chosen confidence hours
     * and material are the expected ones, and the contingency goes up to the cost at it; else they are those of the lines.
     */
    public Optional<PriceBasis> basis() {
        EstimateSheet next = sheet.next();
        Optional<Money> rate = labourRate.amount();
        if (rate.isEmpty() && !next.hours().isZero()) {
            return Optional.empty();
        }
        Money each = rate.orElse(Money.ZERO);
        Integer percent = confidence().orElse(null);
        return Optional.of(
                percent == null || cost == null
                        ? basis(each, next.hours(), next.material(), Contingency.named(rates.contingencyPercent()))
                        : basis(each, cost.hours(), cost.material(), Contingency.upTo(cost.under(percent))));
    }

    private PriceBasis basis(Money rate, Hours hours, Money material, Contingency contingency) {
        return new PriceBasis(
                hours,
                rate,
                rates.overheadRate(),
                material,
                sheet.next().other(),
                contingency,
                rates.margin(),
                rates.roundingStep(),
                rates.taxPercent());
    }

    /** What it may cost and leave at the price as it stands. */
    public Optional<MoneyAtRisk> risk() {
        if (cost == null) {
            return Optional.empty();
        }
        return sum().map(
                        sum -> cost.at(sum.price(), expected(cost), confidence().orElse(null)));
    }

    /** By the one formula from the expected hours and material, whatever the price was made from. */
    private Money expected(CostSaid said) {
        UnitPrice hour = UnitPrice.of(labourRate.amount().orElse(Money.ZERO));
        return hour.times(said.hours())
                .plus(UnitPrice.of(rates.overheadRate()).times(said.hours()))
                .plus(said.material())
                .plus(sheet.next().other());
    }

    /** The rates as a bid keeps them: a contingency from a chosen confidence is named by it, with the percentage it came to. */
    public EstimateRates offered() {
        Integer percent = confidence().orElse(null);
        if (percent == null) {
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
                "P" + percent,
                rates.margin(),
                rates.roundingStep(),
                rates.taxPercent());
    }

    public Optional<PriceSum> sum() {
        return basis().map(PriceSum::of);
    }

    /** Total of the bid itself and all its options: what a page shows in all, and another sum of it means that one moved. */
    public Money everything() {
        Money all = sum().map(PriceSum::total).orElse(Money.ZERO);
        for (OptionSum option : options) {
            all = all.plus(option.working().everything());
        }
        return all;
    }
}
