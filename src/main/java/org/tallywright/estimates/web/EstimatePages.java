package org.tallywright.estimates.web;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.BidKind;
import org.tallywright.estimates.BidStanding;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.EstimateSheet.BidRow;
import org.tallywright.estimates.EstimateSheet.TaskRow;
import org.tallywright.estimates.HoursSaid;
import org.tallywright.estimates.MissingKinds;
import org.tallywright.estimates.PriceBasis;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.estimates.web.EstimatePage.BidLine;
import org.tallywright.estimates.web.EstimatePage.Group;
import org.tallywright.estimates.web.EstimatePage.OwnersPart;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.ShopDates;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.SignedIn;
import org.tallywright.web.Tag;

/** Puts a job's estimate on a page, as much of it as the reader may see. */
@Component
class EstimatePages {
    private final EstimatePricer pricer;
    private final Ladder ladder;
    private final RiskRungs risk;
    private final WhatIfPages whatIfs;
    private final OptionParts options;
    private final ShopDates dates;
    private final ShopConventions shop;

    EstimatePages(
            EstimatePricer pricer,
            Ladder ladder,
            RiskRungs risk,
            WhatIfPages whatIfs,
            OptionParts options,
            ShopDates dates,
            ShopConventions shop) {
        this.pricer = pricer;
        this.ladder = ladder;
        this.risk = risk;
        this.whatIfs = whatIfs;
        this.options = options;
        this.dates = dates;
        this.shop = shop;
    }

    EstimatePage page(JobRef job, String by, SignedIn me) {
        if (me.seesMoney()) {
            WorkingSum working = pricer.of(job.id());
            return page(
                    job,
                    by,
                    working.sheet(),
                    outlook(working.sheet(), working.said()),
                    Optional.of(owners(job, working)));
        }
        EstimateSheet sheet = pricer.sheet(job.id());
        return page(job, by, sheet, outlook(sheet, pricer.said(job.id(), sheet).orElse(null)), Optional.empty());
    }

    private static EstimatePage page(
            JobRef job,
            String by,
            EstimateSheet sheet,
            EstimatePage.@Nullable Outlook outlook,
            Optional<OwnersPart> money) {
        // The owner has the options apart, each with its price; a lead has their work and material among the rest.
        EstimateSheet shown = money.isPresent() ? sheet.base() : sheet.offered();
        return new EstimatePage(
                job.number(),
                by,
                !job.isClosed(),
                groups(shown, by),
                shown.hours(),
                shown.materials(),
                shown.material(),
                sheet.sold() ? List.of() : MissingKinds.of(sheet),
                outlook,
                money.orElse(null));
    }

    private static EstimatePage.@Nullable Outlook outlook(EstimateSheet sheet, @Nullable HoursSaid said) {
        if (said == null) {
            return null;
        }
        List<EstimatePage.OutlookLine> lines = new ArrayList<>();
        for (TaskRow task : sheet.next().tasks()) {
            HoursSaid.Line line = said.lines().get(task.id());
            if (line != null) {
                lines.add(new EstimatePage.OutlookLine(task.name(), task.hours(), line));
            }
        }
        return new EstimatePage.Outlook(said, lines);
    }

    private static List<Group> groups(EstimateSheet sheet, String by) {
        Map<String, List<TaskRow>> tasks = new LinkedHashMap<>();
        List<TaskRow> ordered = new ArrayList<>(sheet.tasks());
        if (by.equals("stage")) {
            ordered.sort(Comparator.comparingInt(TaskRow::stagePosition));
        }
        for (TaskRow task : ordered) {
            String name = by.equals("stage") ? task.stageName() : task.pieceName();
            tasks.computeIfAbsent(name, n -> new ArrayList<>()).add(task);
        }
        return tasks.entrySet().stream()
                .map(g -> new Group(
                        g.getKey().isEmpty() ? "The whole job" : g.getKey(),
                        g.getValue(),
                        Hours.sum(g.getValue().stream().map(TaskRow::hours).toList())))
                .toList();
    }

    private OwnersPart owners(JobRef job, WorkingSum working) {
        EstimateSheet next = working.sheet().next();
        Optional<PriceSum> sum = working.sum();
        boolean change = working.sheet().nextKind() == BidKind.CHANGE_ORDER;
        return new OwnersPart(
                working.sheet().base().others(),
                working.sheet().base().other(),
                working.cost() == null
                        ? ""
                        : working.confidence().map(Object::toString).orElse("0"),
                next.isEmpty() ? List.of() : ladder.of(working),
                working.risk().map(risk::of).orElse(List.of()),
                working.risk().map(RiskRungs::hint).orElse(""),
                why(working, next, change),
                change ? "change order" : "bid",
                !next.isEmpty() && sum.isPresent(),
                change ? "The next change order" : "The price",
                sum.map(s -> s.keptMargin() + " %").orElse(""),
                perHour(working.basis().map(PriceBasis::hours).orElse(Hours.ZERO), sum),
                job.isClosed() ? null : whatIfs.standing(working).orElse(null),
                options.of(working),
                working.bids().stream().map(this::line).toList());
    }

    private static String why(WorkingSum working, EstimateSheet next, boolean change) {
        if (next.isEmpty()) {
            return change
                    ? "Every line is in an accepted bid or in a change order that is out. Add what changes, then issue it."
                    : "Add tasks and material above; the price grows here, line by line.";
        }
        if (working.sum().isEmpty()) {
            List<String> unpaid = working.labourRate().unpaid();
            return unpaid.isEmpty()
                    ? "There is no rate for the hours yet. Say under Rates who does the work."
                    : "No wage is known today for " + String.join(", ", unpaid)
                            + ". Enter it under Crew, or give a rate by hand under Rates.";
        }
        return "";
    }

    /** What an hour brings after material: (price - material) / hours. */
    private String perHour(Hours hours, Optional<PriceSum> sum) {
        if (hours.isZero() || sum.isEmpty()) {
            return "";
        }
        Money earned = sum.get().price().minus(sum.get().material());
        return shop.money()
                .format(earned.times(
                        BigDecimal.valueOf(60).divide(BigDecimal.valueOf(hours.minutes()), MathContext.DECIMAL64)));
    }

    private BidLine line(BidRow bid) {
        return new BidLine(bid.id(), bid.number(), bid.title(), tag(bid.standing()), when(bid), bid.price());
    }

    private String when(BidRow bid) {
        if (bid.acceptedOn() != null) {
            return "Accepted " + dates.day(bid.acceptedOn()) + " by " + bid.acceptedName();
        }
        return bid.declinedOn() != null
                ? "Declined " + dates.day(bid.declinedOn())
                : "Issued " + dates.day(bid.issuedOn()) + ", good until " + dates.day(bid.validUntil());
    }

    static Tag tag(BidStanding standing) {
        Tag.Sort sort = switch (standing) {
            case OPEN -> Tag.Sort.NOW;
            case ACCEPTED -> Tag.Sort.GOOD;
            case EXPIRED -> Tag.Sort.WAIT;
            case SUPERSEDED, DECLINED, WITHDRAWN -> Tag.Sort.DONE;
        };
        String word = standing.word();
        return new Tag(sort, Character.toUpperCase(word.charAt(0)) + word.substring(1));
    }
}
