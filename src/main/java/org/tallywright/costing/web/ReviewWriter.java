package org.tallywright.costing.web;

import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tallywright.costing.CostSums;
import org.tallywright.costing.JobFigures;
import org.tallywright.costing.MaterialFigures;
import org.tallywright.costing.Slack;
import org.tallywright.costing.SplitLine;
import org.tallywright.costing.web.ReviewPage.Part;
import org.tallywright.costing.web.ReviewPage.Rung;
import org.tallywright.costing.web.ReviewPage.Tile;

/** Turns a job's figures into the words of the page; nothing is looked up, so that what was frozen stays as it was. */
final class ReviewWriter {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    private final JobFigures figures;
    private final String base;
    private final Written write;
    private final Links links;
    private final BehindTiles behind;

    private ReviewWriter(JobFigures figures, String base) {
        this.figures = figures;
        this.base = base;
        this.write = new Written(figures.money());
        this.links = new Links(base);
        this.behind = new BehindTiles(figures, links, write);
    }

    /** @param base address of the job, such as /jobs/26-014 */
    static ReviewPage write(JobFigures figures, String base) {
        return new ReviewWriter(figures, base).page();
    }

    private ReviewPage page() {
        TaskTable tasks = new TaskTable(figures, base);
        CostSums planned = figures.planned();
        boolean empty = figures.tasks().isEmpty()
                && figures.materials().isEmpty()
                && figures.actual().minutes() == 0;
        BigDecimal difference = planned == null ? null : figures.actual().cost().subtract(planned.cost());
        return new ReviewPage(
                base,
                figures.closed(),
                empty,
                planned != null,
                figures.basis().name().toLowerCase(Locale.ROOT),
                figures.asOf().format(DAY),
                figures.unpricedMinutes() == 0 ? null : Written.hours(figures.unpricedMinutes()),
                tiles(),
                ladder(),
                BehindTiles.overhead(write, figures.actual().minutes(), figures.overheadRate()),
                tasks.stages(),
                tasks.sum(),
                tasks.worst(),
                parts(figures.classes(), "class"),
                parts(figures.people(), "person"),
                loose(),
                Written.hours(looseMinutes()),
                again(),
                figures.materials().stream().map(this::material).toList(),
                figures.others().stream()
                        .map(o -> rung(o.name(), o.planned(), o.actual(), links.materials()))
                        .toList(),
                figures.split().stream().map(this::cause).toList(),
                write.moreMoney(difference),
                slack(figures.slack()),
                figures.agreed().stream()
                        .map(a -> new ReviewPage.Agreed(
                                a.bidId(), a.number(), write.money(a.amounts().price())))
                        .toList());
    }

    private List<Tile> tiles() {
        CostSums actual = figures.actual();
        Optional<CostSums> planned = Optional.ofNullable(figures.planned());
        List<Tile> tiles = new ArrayList<>();
        tiles.add(new Tile(
                "hours",
                Written.hours(actual.minutes()),
                Written.hours(figures.plannedMinutes()),
                false,
                behind.hours()));
        tiles.add(new Tile(
                "cost", write.money(actual.cost()), write.money(planned.map(CostSums::cost)), false, behind.cost()));
        if (figures.closed()) {
            tiles.add(margin("margin", actual.margin(), planned, behind.margin()));
            tiles.add(new Tile(
                    "marginPercent",
                    Written.percent(actual.marginPercent()),
                    Written.percent(planned.flatMap(CostSums::marginPercent)),
                    actual.marginPercent().filter(m -> m.signum() < 0).isPresent(),
                    behind.margin()));
        } else {
            tiles.add(margin("marginNow", actual.margin(), planned, behind.margin()));
            tiles.add(margin(
                    "marginLater",
                    Optional.ofNullable(figures.slack()).map(Slack::left),
                    planned,
                    behind.marginLater()));
        }
        tiles.add(new Tile(
                "earned",
                write.money(actual.earnedPerHour()),
                write.money(planned.flatMap(CostSums::earnedPerHour)),
                false,
                behind.earned()));
        return tiles;
    }

    private Tile margin(
            String key, Optional<BigDecimal> margin, Optional<CostSums> planned, List<ReviewPage.Behind> behind) {
        boolean loss = margin.filter(m -> m.signum() < 0).isPresent();
        return new Tile(key, write.money(margin), write.money(planned.flatMap(CostSums::margin)), loss, behind);
    }

    private List<Rung> ladder() {
        CostSums actual = figures.actual();
        CostSums planned = figures.planned();
        List<Rung> ladder = new ArrayList<>();
        ladder.add(rung("labour", planned == null ? null : planned.labour(), actual.labour(), links.hours()));
        ladder.add(rung("overhead", planned == null ? null : planned.overhead(), actual.overhead(), links.hours()));
        ladder.add(rung("material", planned == null ? null : planned.material(), actual.material(), links.materials()));
        ladder.add(rung("other", planned == null ? null : planned.other(), actual.other(), links.materials()));
        ladder.add(rung("cost", planned == null ? null : planned.cost(), actual.cost(), ""));
        return ladder;
    }

    private Rung rung(String key, @Nullable BigDecimal planned, BigDecimal actual, String href) {
        BigDecimal difference = planned == null ? null : actual.subtract(planned);
        return new Rung(
                key,
                write.money(planned),
                write.money(actual),
                write.moreMoney(difference),
                difference != null && difference.signum() > 0,
                href);
    }

    /** @param filter of the hours page */
    private List<Part> parts(List<JobFigures.Part> parts, String filter) {
        int all = figures.actual().minutes();
        return parts.stream()
                .map(part -> new Part(
                        part.name(),
                        Written.hours(part.minutes()),
                        Written.share(part.minutes(), all),
                        write.money(part.labour()),
                        links.hoursOf(filter, part.key())))
                .toList();
    }

    private List<ReviewPage.LoosePart> loose() {
        int all = figures.actual().minutes();
        return figures.loose().stream()
                .map(part -> new ReviewPage.LoosePart(
                        part.name(),
                        part.hourClass(),
                        Written.hours(part.minutes()),
                        Written.share(part.minutes(), all),
                        write.money(part.labour()),
                        links.loose(part)))
                .toList();
    }

    private int looseMinutes() {
        return figures.loose().stream().mapToInt(JobFigures.Loose::minutes).sum();
    }

    private List<ReviewPage.Again> again() {
        return figures.again().stream()
                .map(a -> new ReviewPage.Again(
                        a.on().format(DAY),
                        a.person(),
                        a.task(),
                        Written.hours(a.minutes()),
                        a.reason(),
                        a.hourClass(),
                        "/entries/" + a.entryId()))
                .toList();
    }

    private ReviewPage.Material material(MaterialFigures line) {
        MaterialFigures.Planned plan = line.planned();
        BigDecimal difference = plan == null ? line.cost() : line.cost().subtract(plan.amount());
        return new ReviewPage.Material(
                links.material(line),
                line.name(),
                line.unit(),
                plan == null ? Written.NONE : Written.quantity(plan.net()),
                plan == null ? Written.NONE : Written.yield(plan.net(), plan.quantity()),
                plan == null ? Written.NONE : Written.quantity(plan.quantity()),
                plan == null ? Written.NONE : write.money(plan.amount()),
                Written.quantity(line.net()),
                Written.yield(line.net(), line.charged()),
                Written.quantity(line.charged()),
                write.money(line.cost()),
                write.moreMoney(difference),
                difference.signum() > 0,
                plan != null);
    }

    private ReviewPage.Cause cause(SplitLine line) {
        Integer minutes = line.minutes();
        return new ReviewPage.Cause(
                line.cause().name().toLowerCase(Locale.ROOT),
                write.moreMoney(line.amount()),
                minutes == null ? "" : Written.moreHours(minutes),
                line.amount().signum() > 0,
                new BehindCauses(figures, links, write).of(line.cause()));
    }

    private ReviewPage.@Nullable SlackSum slack(@Nullable Slack slack) {
        return slack == null
                ? null
                : new ReviewPage.SlackSum(
                        Written.hours(slack.minutes()),
                        write.money(slack.left()),
                        Written.hours(slack.remainingMinutes()),
                        write.money(slack.remainingMaterial()),
                        write.money(slack.remainingOther()),
                        write.money(slack.costOfHour()),
                        slack.minutes() < 0,
                        behind.marginLater());
    }
}
