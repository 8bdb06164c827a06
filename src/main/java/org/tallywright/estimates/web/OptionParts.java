package org.tallywright.estimates.web;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.OptionRow;
import org.tallywright.estimates.OptionSum;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.estimates.web.EstimatePage.OptionEntry;
import org.tallywright.estimates.web.EstimatePage.OptionPart;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.Tag;

/** The options of an estimate as its page shows them to the owner, decided ones too. */
@Component
class OptionParts {
    private final Ladder ladder;
    private final ShopConventions shop;

    OptionParts(Ladder ladder, ShopConventions shop) {
        this.ladder = ladder;
        this.shop = shop;
    }

    List<OptionPart> of(WorkingSum working) {
        List<OptionPart> parts = new ArrayList<>();
        for (OptionRow option : working.sheet().options()) {
            WorkingSum sum = working.options().stream()
                    .filter(one -> one.option().id().equals(option.id()))
                    .map(OptionSum::working)
                    .findFirst()
                    .orElse(null);
            parts.add(new OptionPart(
                    option.id(),
                    option.name(),
                    option.words(),
                    option.oneOf(),
                    option.isOpen()
                            ? null
                            : option.fate().equals(OptionRow.CHOSEN)
                                    ? new Tag(Tag.Sort.GOOD, "Chosen")
                                    : new Tag(Tag.Sort.DONE, "Not taken"),
                    option.fate().equals(OptionRow.DECLINED),
                    option.canBeOfferedAgain(),
                    lines(working.sheet().option(option.id())),
                    sum == null ? null : sum.sum().map(PriceSum::price).orElse(null),
                    sum == null ? List.of() : ladder.of(sum)));
        }
        return parts;
    }

    private List<OptionEntry> lines(EstimateSheet sheet) {
        List<OptionEntry> lines = new ArrayList<>();
        sheet.tasks()
                .forEach(t -> lines.add(new OptionEntry(
                        t.name() + ", " + t.quantity() + " " + t.unit().code() + ", " + t.hours(),
                        "/tasks/" + t.id())));
        sheet.materials()
                .forEach(m -> lines.add(new OptionEntry(
                        m.name() + ", " + m.net() + " " + m.unit() + ", "
                                + shop.money().format(m.amount()),
                        "/materials/" + m.id())));
        sheet.others()
                .forEach(o -> lines.add(new OptionEntry(
                        o.description() + ", " + shop.money().format(o.amount()), "/others/" + o.id())));
        return lines;
    }
}
