package org.tallywright.estimates.web;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.CostBehind;
import org.tallywright.estimates.MoneyAtRisk;
import org.tallywright.estimates.web.EstimatePage.Entry;
import org.tallywright.estimates.web.EstimatePage.Rung;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.ShopConventions;

/** What an offer may cost and leave, in words; each line opens to its formula and to what goes in. */
@Component
class RiskRungs {
    private static final int FEW_JOBS = 5;

    private final ShopConventions shop;

    RiskRungs(ShopConventions shop) {
        this.shop = shop;
    }

    List<Rung> of(MoneyAtRisk risk) {
        List<Rung> rungs = new ArrayList<>();
        rungs.add(step(
                "Cost, 80 % range",
                shop.money().whole(risk.low()) + " to " + shop.money().whole(risk.high()),
                "Four times in five it ends in between; as often over as under " + money(risk.likely())
                        + "; four jobs in five cost no more than " + money(risk.p80()) + ". Drawn "
                        + risk.behind().draws() + " times from:",
                behind(risk.behind())));
        rungs.add(step(
                "Expected profit",
                money(risk.profit()),
                "Price before tax less the expected cost, " + money(risk.expected())
                        + ": expected hours x (labour + overhead) + expected material + other costs. What many such jobs"
                        + " leave, each.",
                List.of()));
        rungs.add(new Rung(
                "Loses money",
                inAHundred(risk.loss()),
                "sum",
                "The share of the " + risk.behind().draws()
                        + " drawn costs that lie above the price before tax. The same lines always give the same draws.",
                List.of()));
        return rungs;
    }

    /** How much of the shop's own stands behind it. */
    static String hint(MoneyAtRisk risk) {
        int jobs = risk.behind().jobs();
        if (jobs == 0) {
            return "No finished job stands behind this yet: common practice with a wide range, no more than a hint.";
        }
        String from = "From " + (jobs == 1 ? "1 finished job" : jobs + " finished jobs") + "; "
                + risk.behind().startingPercent() + " % of the hours is still the starting rates.";
        return jobs < FEW_JOBS ? from + " That is little: take it as a hint." : from;
    }

    static String often(int confidence) {
        return switch (confidence) {
            case 80 -> "four in five such jobs stay under";
            case 90 -> "nine in ten such jobs stay under";
            default -> "such a job passes as often as not";
        };
    }

    static String inAHundred(Percent loss) {
        int whole = loss.amount().setScale(0, RoundingMode.HALF_UP).intValue();
        if (whole == 0) {
            return "fewer than 1 in 100";
        }
        return whole == 100 ? "nearly always" : "about " + whole + " in 100";
    }

    private static List<Entry> behind(CostBehind behind) {
        List<Entry> entries = new ArrayList<>();
        entries.add(new Entry(
                "Hours, those on no line included; " + behind.startingPercent()
                        + " % of it is still the starting rates",
                jobs(behind.jobs())));
        entries.add(hour(behind));
        if (behind.laidOut() > 0) {
            entries.add(new Entry(
                    "Bought as laid out; boards as the lots drawn for them. What is really bought beside a layout is not"
                            + " learnt yet and not in this",
                    behind.laidOut() == 1 ? "1 line" : behind.laidOut() + " lines"));
        }
        if (behind.materials() > 0) {
            entries.add(new Entry(
                    "Yields, bought in whole purchase units; without jobs of their own the line's yield, a fifth or so to"
                            + " either side (common practice, no source)",
                    behind.yields() + " of " + behind.materials() + " known"));
        }
        if (behind.materials() > 0 || behind.laidOut() > 0) {
            entries.add(new Entry(
                    "Prices move about today's as yours did from one purchase to the next, mixed with 5 % (common"
                            + " practice, no source)",
                    behind.priceSteps() == 1 ? "1 repeat purchase" : behind.priceSteps() + " repeat purchases"));
        }
        entries.add(new Entry("Other costs and freight", "as they stand"));
        return entries;
    }

    private static Entry hour(CostBehind behind) {
        return behind.crewMatters()
                ? new Entry(
                        "Who does how much of it, about the shares under Rates; where few jobs tell, a half may be a third"
                                + " or two thirds (common practice, no source)",
                        jobs(behind.crewJobs()))
                : new Entry("The cost of an hour is the same whoever works", "as it stands");
    }

    private static String jobs(int count) {
        return count == 0 ? "no own job" : count == 1 ? "1 own job" : count + " own jobs";
    }

    private static Rung step(String name, String value, String formula, List<Entry> entries) {
        return new Rung(name, value, "step", formula, entries);
    }

    private String money(Money amount) {
        return shop.money().format(amount);
    }
}
