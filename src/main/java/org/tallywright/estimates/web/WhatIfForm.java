package org.tallywright.estimates.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.CrewShare;
import org.tallywright.estimates.EstimateRates;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.people.PersonName;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;
import org.tallywright.web.FormReader;

/**
 * Another price as it is tried.
 *
 * @param confidence 50, 80 or 90; 0 for the named percentage
 * @param crew {@link #STANDS}, a person's id, or two with a plus between for half each
 */
record WhatIfForm(
        @Nullable Integer version,
        @Nullable String confidence,
        @Nullable String crew,
        @Nullable String margin) {
    static final String STANDS = "stands";

    /** What is tried, read. */
    record Tried(EstimateRates rates, @Nullable Integer confidence) {}

    static WhatIfForm of(WorkingSum working) {
        return new WhatIfForm(
                working.version(),
                working.confidence().map(Object::toString).orElse("0"),
                STANDS,
                working.rates().margin().percent().amount().toPlainString());
    }

    /** What is missing is as it stands; of the version that is looked at. */
    WhatIfForm filled(WorkingSum stands) {
        WhatIfForm now = of(stands);
        return new WhatIfForm(
                stands.version(), or(confidence, now.confidence), or(crew, STANDS), or(margin, now.margin));
    }

    /** Null where something is refused. */
    @Nullable
    Tried read(FormReader read, WorkingSum stands, List<PersonName> people) {
        Integer percent = read.field("confidence", () -> percent(Picked.text(confidence)));
        List<CrewShare> shares = read.field("crew", () -> shares(Picked.text(crew), people));
        Margin kept = read.field("margin", () -> Margin.of(Picked.text(margin)));
        if (read.refused() || percent == null || kept == null || shares == null) {
            return null;
        }
        EstimateRates rates = stands.rates();
        return new Tried(
                new EstimateRates(
                        shares.isEmpty() ? rates.labourRate() : null,
                        shares.isEmpty() ? rates.crew() : shares,
                        rates.overheadRate(),
                        rates.contingencyPercent(),
                        rates.contingencyName(),
                        kept,
                        rates.roundingStep(),
                        rates.taxPercent()),
                percent == 0 ? null : percent);
    }

    private static String or(@Nullable String typed, @Nullable String standing) {
        return typed == null || typed.isBlank() ? Picked.text(standing) : typed;
    }

    private static int percent(String chosen) {
        return switch (chosen) {
            case "0", "50", "80", "90" -> Integer.parseInt(chosen);
            default -> throw new Refused("Choose one of the four.");
        };
    }

    /** None where the crew stays as it stands. */
    private static List<CrewShare> shares(String chosen, List<PersonName> people) {
        if (chosen.equals(STANDS)) {
            return List.of();
        }
        String[] ids = chosen.split("\\+", 3);
        List<CrewShare> shares = new ArrayList<>();
        for (String id : ids) {
            PersonName person = people.stream()
                    .filter(one -> one.id().toString().equals(id))
                    .findAny()
                    .orElseThrow(() -> new Refused("Choose one of the list."));
            shares.add(new CrewShare(person.id(), Percent.of(ids.length == 1 ? 100 : 50)));
        }
        if (shares.stream().map(CrewShare::personId).distinct().count() != ids.length || ids.length > 2) {
            throw new Refused("Choose one of the list.");
        }
        return shares;
    }
}
