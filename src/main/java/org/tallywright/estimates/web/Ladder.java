package org.tallywright.estimates.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.AcceptedBid;
import org.tallywright.estimates.BidMaterial;
import org.tallywright.estimates.BidSums;
import org.tallywright.estimates.BidTask;
import org.tallywright.estimates.EstimateRates;
import org.tallywright.estimates.EstimateSheet;
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
        EstimateSheet next = working.sheet().next();
        Parts parts = new Parts(
                basis.hours(),
                basis.labourRate(),
                basis.overheadRate(),
                working.confidence().orElse(null),
                next.hours(),
                next.material(),
                rates.contingencyPercent(),
                rates.contingencyName(),
                rates.margin(),
                rates.taxPercent(),
                "To the nearest " + money(rates.roundingStep()) + ".");
        List<Entry> materials = next.materials().stream()
                .map(m -> new Entry(
                        m.name() + ": " + m.net() + " " + m.unit() + " net / " + m.yield() + ", buys " + m.purchase()
                                + " at " + shop.money().format(m.price())
                                + (m.freight().isZero() ? "" : " and " + money(m.freight()) + " freight"),
                        money(m.amount())))
                .toList();
        List<Entry> others = next.others().stream()
                .map(o -> new Entry(o.description(), money(o.amount())))
                .toList();
        return rungs(parts, PriceSum.of(basis), crew(working.labourRate()), materials, others);
    }

    /**
     * Of an issued bid, from its frozen figures.
     *
     * @param confidence it was priced at, or null
     */
    List<Rung> of(AcceptedBid bid, @Nullable Integer confidence, List<Entry> materials, List<Entry> others) {
        BidSums sums = bid.sums();
        Parts parts = new Parts(
                sums.hours(),
                sums.labourRate(),
                sums.overheadRate(),
                confidence,
                Hours.sum(bid.tasks().stream().map(BidTask::hours).toList()),
                Money.sum(bid.materials().stream().map(BidMaterial::amount).toList()),
                sums.contingencyPercent(),
                sums.contingencyName(),
                sums.margin(),
                sums.taxPercent(),
                "As it was rounded when it was issued.");
        return rungs(parts, sums.sum(), List.of(), materials, others);
    }

    /**
     * @param confidence null for the named percentage: hours and material are then those of the lines
     * @param lineHours that the lines name
     * @param lineMaterial that the lines come to
     */
    private record Parts(
            Hours hours,
            Money labourRate,
            Money overheadRate,
            @Nullable Integer confidence,
            Hours lineHours,
            Money lineMaterial,
            Percent contingency,
            String contingencyName,
            Margin margin,
            Percent tax,
            String rounding) {
        String expected() {
            return confidence == null ? "" : " expected";
        }
    }

    private List<Rung> rungs(Parts parts, PriceSum sum, List<Entry> crew, List<Entry> materials, List<Entry> others) {
        List<Rung> ladder = new ArrayList<>();
        ladder.add(step("Labour", sum.labour(), labour(parts), crew));
        ladder.add(step("Material", sum.material(), material(parts), materials));
        ladder.add(step("Other costs", sum.other(), "The other lines added up.", others));
        String hour = parts.hours() + parts.expected() + " x " + money(parts.overheadRate());
        ladder.add(step("Overhead", sum.overhead(), hour, List.of()));
        ladder.add(cost(parts, sum));
        ladder.add(contingency(parts, sum));
        ladder.add(step(
                "Margin",
                sum.margin(),
                "Cost with contingency, " + money(sum.costWithContingency()) + ", / (1 - " + parts.margin()
                        + " %), less that cost.",
                List.of()));
        ladder.add(step("Rounding", sum.rounding(), parts.rounding(), List.of()));
        ladder.add(new Rung("Price", money(sum.price()), "price", "All lines above, to the cent.", List.of()));
        if (!sum.tax().isZero()) {
            ladder.add(step("Tax", sum.tax(), parts.tax() + " % of the price.", List.of()));
            ladder.add(new Rung("Total", money(sum.total()), "price", "Price + tax.", List.of()));
        }
        return ladder;
    }

    private String labour(Parts parts) {
        String sum = parts.hours() + parts.expected() + " x " + money(parts.labourRate()) + ".";
        return parts.confidence() == null
                ? sum
                : sum + " The lines name " + parts.lineHours()
                        + "; the rest is what your own past says they run over, and hours on no line.";
    }

    private String material(Parts parts) {
        return parts.confidence() == null
                ? "The material lines added up."
                : "Expected. The lines below come to " + money(parts.lineMaterial())
                        + "; waste as it may fall, in whole purchase units, makes the difference.";
    }

    private Rung cost(Parts parts, PriceSum sum) {
        return parts.confidence() == null
                ? sum(
                        "Cost by the lines",
                        sum.cost(),
                        "Labour + material + other costs + overhead, as the lines have them.")
                : sum(
                        "Expected cost",
                        sum.cost(),
                        "Labour + material + other costs + overhead: what many such jobs come to, each.");
    }

    private Rung contingency(Parts parts, PriceSum sum) {
        if (parts.confidence() == null) {
            String what = parts.contingencyName().isEmpty() ? "Contingency" : "Contingency: " + parts.contingencyName();
            String formula = parts.contingency() + " % of the cost by the lines, for what no line names.";
            return step(what, sum.contingency(), formula, List.of());
        }
        String formula = "The cost that " + RiskRungs.often(parts.confidence()) + ", "
                + money(sum.costWithContingency()) + ", less the expected cost, " + money(sum.cost()) + ".";
        String below = sum.contingency().isNegative()
                ? " It lies below: now and then a job runs far over, and that lifts the expected cost above the middle one."
                : "";
        return step("Contingency, up to P" + parts.confidence(), sum.contingency(), formula + below, List.of());
    }

    private List<Entry> crew(LabourRate rate) {
        if (rate.byHand() != null) {
            return List.of(new Entry("Rate given by hand", money(rate.byHand())));
        }
        return rate.parts().stream()
                .map(part -> new Entry(
                        part.name() + ", " + part.share() + " % of the hours, wage and burden",
                        // Without any hours a price needs no wage.
                        part.burdened() == null ? "no wage yet" : money(part.burdened())))
                .toList();
    }

    private Rung step(String name, Money value, String formula, List<Entry> entries) {
        return new Rung(name, money(value), "step", formula, entries);
    }

    private Rung sum(String name, Money value, String formula) {
        return new Rung(name, money(value), "sum", formula, List.of());
    }

    private String money(Money amount) {
        return shop.money().format(amount);
    }
}
