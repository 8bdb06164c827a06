package org.tallywright.estimates.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.MoneyAtRisk;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.estimates.web.WhatIfForm.Tried;
import org.tallywright.estimates.web.WhatIfPage.Row;
import org.tallywright.people.People;
import org.tallywright.people.PersonName;
import org.tallywright.shared.Money;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;

/** Lays a tried price beside the one that stands: what is asked, what is left, how often it loses. */
@Component
class WhatIfPages {
    private static final int MOST_CREWS = 12;

    private final EstimatePricer pricer;
    private final Ladder ladder;
    private final People people;
    private final ShopConventions shop;

    WhatIfPages(EstimatePricer pricer, Ladder ladder, People people, ShopConventions shop) {
        this.pricer = pricer;
        this.ladder = ladder;
        this.people = people;
        this.shop = shop;
    }

    /** Nothing tried yet; empty while there is no price, or no past nor starting rate to judge it by. */
    Optional<WhatIfPage> standing(WorkingSum stands) {
        return stands.risk().isEmpty()
                ? Optional.empty()
                : Optional.of(page(WhatIfForm.of(stands), FormErrors.none(), stands, stands));
    }

    /** What is asked for, read against the people who may do the work. */
    @org.jspecify.annotations.Nullable
    Tried read(WhatIfForm form, WorkingSum stands, FormReader read) {
        return form.read(read, stands, people.crew());
    }

    WhatIfPage refused(WhatIfForm form, WorkingSum stands, FormErrors errors) {
        return none(form, errors, stands, "");
    }

    WhatIfPage tried(WhatIfForm form, WorkingSum stands, Tried tried) {
        boolean same = tried.rates().equals(stands.rates())
                && Optional.ofNullable(tried.confidence()).equals(stands.confidence());
        return page(
                form,
                FormErrors.none(),
                stands,
                same ? stands : pricer.tried(stands, tried.rates(), tried.confidence()));
    }

    private WhatIfPage page(WhatIfForm form, FormErrors errors, WorkingSum stands, WorkingSum tried) {
        List<String> unpaid = tried.labourRate().unpaid();
        boolean differs = tried != stands;
        if (stands.sheet().next().isEmpty()) {
            String why = "There is nothing to price. Add tasks or material to the estimate, then try.";
            return none(form, errors, stands, why);
        }
        if (tried.sum().isEmpty()) {
            String why = unpaid.isEmpty()
                    ? "There is no rate for the hours. Say under Rates who does the work."
                    : "No wage is known today for " + String.join(", ", unpaid) + ". Enter it under Crew.";
            return none(form, errors, stands, why);
        }
        return new WhatIfPage(
                form,
                errors,
                crews(stands),
                rows(stands, tried),
                differs ? ladder.of(tried) : List.of(),
                tried.risk().map(RiskRungs::hint).orElse(""),
                "",
                differs);
    }

    private WhatIfPage none(WhatIfForm form, FormErrors errors, WorkingSum stands, String why) {
        return new WhatIfPage(form, errors, crews(stands), List.of(), List.of(), "", why, false);
    }

    private List<Row> rows(WorkingSum stands, WorkingSum tried) {
        return List.of(
                row("Price", stands, tried, sum -> money(sum, PriceSum::price)),
                row("Expected cost", stands, tried, sum -> risk(sum, r -> money(r.expected()))),
                row(
                        "Cost, 80 % range",
                        stands,
                        tried,
                        sum -> risk(
                                sum,
                                r -> shop.money().whole(r.low()) + " to "
                                        + shop.money().whole(r.high()))),
                row("Expected profit", stands, tried, sum -> risk(sum, r -> money(r.profit()))),
                row("Loses money", stands, tried, sum -> risk(sum, r -> RiskRungs.inAHundred(r.loss()))),
                row(
                        "An hour costs",
                        stands,
                        tried,
                        sum -> sum.labourRate().amount().map(this::money).orElse("")));
    }

    private static Row row(String name, WorkingSum stands, WorkingSum tried, Function<WorkingSum, String> figure) {
        return new Row(name, figure.apply(stands), figure.apply(tried));
    }

    private static String risk(WorkingSum sum, Function<MoneyAtRisk, String> figure) {
        return sum.risk().map(figure).orElse("");
    }

    private String money(WorkingSum sum, Function<PriceSum, Money> figure) {
        return sum.sum().map(figure).map(this::money).orElse("");
    }

    private String money(Money amount) {
        return shop.money().format(amount);
    }

    /** As it stands, each alone, and each two with half of the hours each. */
    private Map<String, String> crews(WorkingSum stands) {
        Map<String, String> crews = new LinkedHashMap<>();
        Money byHand = stands.rates().labourRate();
        crews.put(
                WhatIfForm.STANDS,
                byHand == null ? "As under Rates" : "The rate given by hand, " + money(byHand) + " an hour");
        List<PersonName> crew = people.crew();
        crew.forEach(one -> crews.put(one.id().toString(), one.name() + " alone"));
        for (int a = 0; a < crew.size(); a++) {
            for (int b = a + 1; b < crew.size() && crews.size() < MOST_CREWS; b++) {
                PersonName one = crew.get(a);
                PersonName two = crew.get(b);
                crews.put(one.id() + "+" + two.id(), one.name() + " and " + two.name() + ", half each");
            }
        }
        return crews;
    }
}
