package org.tallywright.estimates.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.CrewShare;
import org.tallywright.estimates.EstimateRates;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.people.PersonName;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/**
 * The rates as typed.
 *
 * @param shares by person id, in percent; empty for none
 */
record RatesForm(
        @Nullable Integer version,
        @Nullable String labourRate,
        @Nullable String overheadRate,
        @Nullable String contingency,
        @Nullable String contingencyName,
        @Nullable String margin,
        @Nullable String roundingStep,
        @Nullable String tax,
        @Nullable Map<String, String> shares) {

    static RatesForm of(WorkingSum sum) {
        EstimateRates rates = sum.rates();
        Map<String, String> shares = new LinkedHashMap<>();
        rates.crew().forEach(s -> shares.put(s.personId().toString(), plain(s.sharePercent())));
        Money byHand = rates.labourRate();
        return new RatesForm(
                sum.version(),
                byHand == null ? "" : byHand.amount().toPlainString(),
                rates.overheadRate().amount().toPlainString(),
                plain(rates.contingencyPercent()),
                rates.contingencyName(),
                plain(rates.margin().percent()),
                rates.roundingStep().amount().toPlainString(),
                plain(rates.taxPercent()),
                shares);
    }

    /** All places, unlike what a page shows: a form that is sent back unchanged changes nothing. */
    private static String plain(Percent percent) {
        return percent.amount().toPlainString();
    }

    String share(UUID person) {
        return shares == null ? "" : shares.getOrDefault(person.toString(), "");
    }

    @Nullable
    EstimateRates read(FormReader read, List<PersonName> people) {
        Money byHand = read.optional("labourRate", labourRate, () -> Money.of(Picked.text(labourRate)));
        List<CrewShare> crew = crew(read, people);
        Money overhead = read.field("overheadRate", () -> Money.of(Picked.text(overheadRate)));
        Percent extra = read.field("contingency", () -> Percent.of(Picked.text(contingency)));
        String why = read.field("contingencyName", () -> Typed.line(Picked.text(contingencyName), 80));
        Margin profit = read.field("margin", () -> Margin.of(Picked.text(margin)));
        Money step = read.field("roundingStep", () -> Money.of(Picked.text(roundingStep)));
        Percent onTop = read.field("tax", () -> Percent.of(Picked.text(tax)));
        if (read.refused()
                || overhead == null
                || extra == null
                || why == null
                || profit == null
                || step == null
                || onTop == null) {
            return null;
        }
        return new EstimateRates(byHand, crew, overhead, extra, why, profit, step, onTop);
    }

    private List<CrewShare> crew(FormReader read, List<PersonName> people) {
        List<CrewShare> crew = new ArrayList<>();
        for (PersonName person : people) {
            String typed = share(person.id());
            Percent share = read.optional("shares[" + person.id() + "]", typed, () -> share(typed));
            if (share != null && share.amount().signum() > 0) {
                crew.add(new CrewShare(person.id(), share));
            }
        }
        return crew;
    }

    private static Percent share(String typed) {
        Percent share = Percent.of(typed);
        if (share.compareTo(Percent.of(100)) > 0 || share.amount().scale() > 3) {
            throw new Refused("A share goes from 0 to 100 with up to three places.");
        }
        return share;
    }
}
