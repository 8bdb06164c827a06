package org.tallywright.costing.web;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.tallywright.costing.Cause;
import org.tallywright.costing.CostSums;
import org.tallywright.costing.JobFigures;
import org.tallywright.costing.MaterialFigures;
import org.tallywright.costing.SplitShare;
import org.tallywright.costing.TaskFigures;
import org.tallywright.costing.web.ReviewPage.Behind;

/** What made a part of the difference: tasks, materials, hours and bids, each with its share, the largest first. */
record BehindCauses(JobFigures figures, Links links, Written write) {

    List<Behind> of(Cause cause) {
        CostSums planned = figures.planned();
        if (planned == null) {
            return List.of();
        }
        return switch (cause) {
            case LOOSE_HOURS -> figures.loose().stream().map(this::loose).toList();
            case OVERHEAD -> overhead(planned);
            case OTHER -> figures.others().stream().map(this::other).toList();
            case BEYOND_LINES -> beyond(planned);
            case ROUNDING -> List.of();
            default ->
                figures.shares().stream()
                        .filter(share -> share.cause() == cause)
                        .sorted(Comparator.comparing(
                                        (SplitShare share) -> share.amount().abs())
                                .reversed())
                        .map(this::share)
                        .toList();
        };
    }

    private Behind share(SplitShare share) {
        Integer minutes = share.minutes();
        return new Behind(
                "",
                Links.named(share.source()),
                write.moreMoney(share.amount()),
                minutes == null ? "" : Written.moreHours(minutes),
                links.of(share.source()));
    }

    private Behind loose(JobFigures.Loose part) {
        String name = part.name().isEmpty() ? part.hourClass() : part.name() + ": " + part.hourClass();
        return new Behind(
                "", name, write.moreMoney(part.labour()), Written.moreHours(part.minutes()), links.loose(part));
    }

    private List<Behind> overhead(CostSums planned) {
        String worked = BehindTiles.overhead(write, figures.actual().minutes(), figures.overheadRate());
        return Stream.concat(
                        Stream.of(new Behind(
                                "logged", "", write.moreMoney(figures.actual().overhead()), worked, links.hours())),
                        plans(planned.overhead(), CostSums::overhead))
                .toList();
    }

    private Behind other(JobFigures.Other other) {
        String note = write.money(other.actual()) + ", planned " + write.money(other.planned());
        BigDecimal more = other.actual().subtract(other.planned());
        return new Behind("", other.name(), write.moreMoney(more), note, links.materials());
    }

    /** Labour and material of the bids' sums go off, those of their lines come back; a difference of cents is rounding. */
    private List<Behind> beyond(CostSums planned) {
        BigDecimal labour = figures.tasks().stream()
                .map(TaskFigures::planned)
                .map(plan -> plan == null || plan.labour() == null ? BigDecimal.ZERO : plan.labour())
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal material = figures.materials().stream()
                .map(MaterialFigures::planned)
                .map(plan -> plan == null ? BigDecimal.ZERO : plan.amount())
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        return Stream.concat(
                        beyond("Labour", planned.labour(), CostSums::labour, labour),
                        beyond("Material", planned.material(), CostSums::material, material))
                .toList();
    }

    private Stream<Behind> beyond(
            String key, BigDecimal sums, Function<CostSums, BigDecimal> kind, BigDecimal ofLines) {
        if (sums.subtract(ofLines).abs().compareTo(BigDecimal.ONE) < 0) {
            return Stream.empty();
        }
        return Stream.concat(
                plans(sums, kind).map(row -> renamed(row, "sum" + key)),
                Stream.of(new Behind("lines" + key, "", write.moreMoney(ofLines), "", "")));
    }

    private static Behind renamed(Behind row, String key) {
        return new Behind(key, row.name(), row.value(), row.note(), row.href());
    }

    /** What each bid held of it, taken off; the estimate where none is accepted. */
    private Stream<Behind> plans(BigDecimal all, Function<CostSums, BigDecimal> kind) {
        if (figures.agreed().isEmpty()) {
            return Stream.of(new Behind("estimate", "", write.moreMoney(all.negate()), "", links.estimate()));
        }
        return figures.agreed().stream()
                .map(bid -> new Behind(
                        "planned",
                        bid.number(),
                        write.moreMoney(kind.apply(bid.amounts()).negate()),
                        "",
                        links.bid(bid)));
    }
}
