package org.tallywright.costing.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.tallywright.costing.CostSums;
import org.tallywright.costing.JobFigures;
import org.tallywright.costing.MaterialFigures;
import org.tallywright.costing.Slack;
import org.tallywright.costing.TaskFigures;
import org.tallywright.costing.web.ReviewPage.Behind;

/** What the figures at the top are made of, with the way to the entries, purchases and bids. */
record BehindTiles(JobFigures figures, Links links, Written write) {

    List<Behind> hours() {
        List<Behind> rows = new ArrayList<>();
        for (JobFigures.Part part : figures.classes()) {
            rows.add(
                    new Behind("", part.name(), Written.hours(part.minutes()), "", links.hoursOf("class", part.key())));
        }
        for (JobFigures.Agreed bid : figures.agreed()) {
            rows.add(new Behind(
                    "planned", bid.number(), Written.hours(bid.amounts().minutes()), "", links.bid(bid)));
        }
        if (figures.agreed().isEmpty()) {
            rows.add(new Behind("estimate", "", Written.hours(figures.plannedMinutes()), "", links.estimate()));
        }
        return rows;
    }

    List<Behind> cost() {
        return List.of(
                kind("labour", CostSums::labour, links.hours()),
                kind("overhead", CostSums::overhead, links.hours()),
                kind("material", CostSums::material, links.materials()),
                kind("other", CostSums::other, links.materials()));
    }

    private Behind kind(String key, Function<CostSums, BigDecimal> kind, String href) {
        CostSums planned = figures.planned();
        String note = planned == null ? "" : planned(write.money(kind.apply(planned)));
        return new Behind(key, "", write.money(kind.apply(figures.actual())), note, href);
    }

    private static String planned(String figure) {
        return "planned " + figure;
    }

    /** Price, then what it cost. */
    List<Behind> margin() {
        List<Behind> rows = prices();
        rows.addAll(cost());
        return rows;
    }

    /** The same, then what is still to come. */
    List<Behind> marginLater() {
        List<Behind> rows = margin();
        Slack slack = figures.slack();
        if (slack != null) {
            rows.addAll(toCome(slack));
        }
        return rows;
    }

    List<Behind> earned() {
        List<Behind> rows = prices();
        rows.add(kind("material", CostSums::material, links.materials()));
        rows.add(new Behind(
                "hours",
                "",
                Written.hours(figures.actual().minutes()),
                planned(Written.hours(figures.plannedMinutes())),
                links.hours()));
        return rows;
    }

    private List<Behind> prices() {
        List<Behind> rows = new ArrayList<>();
        for (JobFigures.Agreed bid : figures.agreed()) {
            rows.add(new Behind("price", bid.number(), write.money(bid.amounts().price()), "", links.bid(bid)));
        }
        return rows;
    }

    /** Each open task with the hours it has left, each material with the money; then other costs. */
    private List<Behind> toCome(Slack slack) {
        List<Behind> rows = new ArrayList<>();
        for (TaskFigures task : figures.closed() ? List.<TaskFigures>of() : figures.tasks()) {
            if (task.remainingMinutes() > 0) {
                String hours = Written.hours(task.remainingMinutes());
                rows.add(new Behind("left", Links.named(task), hours, "", links.task(task)));
            }
        }
        for (MaterialFigures line : figures.closed() ? List.<MaterialFigures>of() : figures.materials()) {
            BigDecimal left = line.remaining();
            if (left.signum() > 0) {
                rows.add(new Behind("left", line.name(), write.money(left), "", links.material(line)));
            }
        }
        if (slack.remainingOther().signum() > 0) {
            rows.add(new Behind("otherLeft", "", write.money(slack.remainingOther()), "", links.materials()));
        }
        return rows;
    }

    /** Hours x rate, in figures. */
    static String overhead(Written write, int minutes, BigDecimal rate) {
        return Written.hours(minutes) + " x " + write.money(rate);
    }
}
