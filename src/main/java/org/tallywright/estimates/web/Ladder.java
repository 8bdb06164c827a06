package org.tallywright.estimates.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.BidSums;
import org.tallywright.estimates.EstimateRates;
import org.tallywright.estimates.LabourRate;
import org.tallywright.estimates.PriceBasis;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.estimates.web.EstimatePage.Entry;
import org.tallywright.estimates.web.EstimatePage.Rung;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.ShopConventions;

/** The price, rung by rung; each rung opens to its formula and the entries it is made of. */
@Component
class Ladder {
    private final ShopConventions shop;

    Ladder(ShopConventions shop) {
        this.shop = shop;
    }

    /** Of what would be offered next; nothing while there is no rate for the hours. */
    List<Rung> of(WorkingSum working) {
        PriceBasis basis = working.basis().orElse(null);
        if (basis == null) {
            return List.of();
        }
        EstimateRates rates = working.offered();
        Parts parts = new Parts(
                basis.hours(),
                basis.labourRate(),
                basis.overheadRate(),
                rates.contingencyPercent(),
                rates.contingencyName(),
                rates.margin(),
                rates.taxPercent(),
                "To the nearest " + money(rates.roundingStep()) + ".");
        List<Entry> materials = working.sheet().next().materials().stream()
                .map(m -> new Entry(
                        m.name() + ": " + m.net() + " " + m.unit() + " net / " + m.yield() + ", buys " + m.purchase()
                                + " at " + shop.money().format(m.price())
                                + (m.freight().isZero() ? "" : " and " + money(m.freight()) + " freight"),
                        money(m.amount())))
                .toList();
        List<Entry> others = working.sheet().next().others().stream()
                .map(o -> new Entry(o.description(), money(o.amount())))
                .toList();
        return rungs(parts, PriceSum.of(basis), crew(working.labourRate()), materials, others);
    }

    /** Of an issued bid, from its frozen figures. */
    List<Rung> of(BidSums sums, List<Entry> materials, List<Entry> others) {
        Parts parts = new Parts(
                sums.hours(),
                sums.labourRate(),
                sums.overheadRate(),
                sums.contingencyPercent(),
                sums.contingencyName(),
                sums.margin(),
                sums.taxPercent(),
                "As it was rounded when it was issued.");
        return rungs(parts, sums.sum(), List.of(), materials, others);
    }

    private record Parts(
            Hours hours,
            Money labourRate,
            Money overheadRate,
            Percent contingency,
            String contingencyName,
            Margin margin,
            Percent tax,
            String rounding) {}

    private List<Rung> rungs(Parts parts, PriceSum sum, List<Entry> crew, List<Entry> materials, List<Entry> others) {
        List<Rung> ladder = new ArrayList<>();
        ladder.add(step("Labour", sum.labour(), parts.hours() + " x " + money(parts.labourRate()), crew));
        ladder.add(step("Material", sum.material(), "The material lines added up.", materials));
        ladder.add(step("Other costs", sum.other(), "The other lines added up.", others));
        ladder.add(step("Overhead", sum.overhead(), parts.hours() + " x " + money(parts.overheadRate()), List.of()));
        ladder.add(sum("Expected cost", sum.cost(), "Labour + material + other costs + overhead."));
        String what = parts.contingencyName().isEmpty() ? "Contingency" : "Contingency: " + parts.contingencyName();
        ladder.add(step(
                what,
                sum.contingency(),
                parts.contingency() + " % of the expected cost, for what no line names.",
                List.of()));
        ladder.add(step(
                "Margin",
                sum.margin(),
                "Cost with contingency, " + money(sum.costWithContingency()) + ", / (1 - " + parts.margin()
                        + " %), less that cost.",
                List.of()));
        ladder.add(step("Rounding", sum.rounding(), parts.rounding(), List.of()));
        ladder.add(new Rung("Price", sum.price(), "price", "All lines above, to the cent.", List.of()));
        if (!sum.tax().isZero()) {
            ladder.add(step("Tax", sum.tax(), parts.tax() + " % of the price.", List.of()));
            ladder.add(new Rung("Total", sum.total(), "price", "Price + tax.", List.of()));
        }
        return ladder;
    }

    private List<Entry> crew(LabourRate rate) {
        if (rate.byHand() != null) {
            return List.of(new Entry("Rate given by hand", money(rate.byHand())));
        }
        return rate.parts().stream()
                .map(part -> new Entry(
                        part.name() + ", " + part.share() + " % of the hours, wage and burden",
                        money(Objects.requireNonNull(part.burdened()))))
                .toList();
    }

    private static Rung step(String name, Money value, String formula, List<Entry> entries) {
        return new Rung(name, value, "step", formula, entries);
    }

    private static Rung sum(String name, Money value, String formula) {
        return new Rung(name, value, "sum", formula, List.of());
    }

    private String money(Money amount) {
        return shop.money().format(amount);
    }
}
