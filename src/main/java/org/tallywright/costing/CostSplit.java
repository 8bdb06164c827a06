package org.tallywright.costing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Variances;

/**
 * Splits the difference between what a job cost and what was planned into its causes, by {@link Variances}. Positive is
 * unfavourable. The parts, each to the cent, add up to the difference exactly: what the cents leave over stands in
 * {@link Cause#ROUNDING}.
 */
final class CostSplit {
    private static final MathContext PRECISE = MathContext.DECIMAL128;
    private static final BigDecimal HOUR = BigDecimal.valueOf(60);

    /** Lines are rounded one by one: up to here a difference between them and their sum is cents. */
    private static final BigDecimal CENTS = BigDecimal.ONE;

    private final Map<Cause, BigDecimal> amounts = new EnumMap<>(Cause.class);
    private final Map<Cause, BigDecimal> hours = new EnumMap<>(Cause.class);
    private final SplitShares shares = new SplitShares();

    private CostSplit() {}

    /** @param closed quantity and yield of material are judged then, and not while it is still being worked */
    static List<SplitLine> of(
            CostSums planned,
            CostSums actual,
            List<TaskFigures> tasks,
            BigDecimal looseLabour,
            int looseMinutes,
            List<MaterialFigures> materials,
            boolean closed) {
        CostSplit split = new CostSplit();
        tasks.forEach(split::labour);
        if (looseMinutes > 0) {
            split.add(Cause.LOOSE_HOURS, looseLabour, hours(looseMinutes));
        }
        materials.forEach(material -> split.material(material, closed));
        split.beyondLines(planned, tasks, materials);
        split.add(Cause.OVERHEAD, actual.overhead().subtract(planned.overhead()), null);
        split.add(Cause.OTHER, actual.other().subtract(planned.other()), null);
        return split.lines(actual.cost().subtract(planned.cost()));
    }

    /** The tasks and materials behind the causes that are theirs; of each cause they add up to its line, to the cent. */
    static List<SplitShare> shares(List<TaskFigures> tasks, List<MaterialFigures> materials, boolean closed) {
        CostSplit split = new CostSplit();
        tasks.forEach(split::labour);
        materials.forEach(material -> split.material(material, closed));
        return split.shares.list();
    }

    private void labour(TaskFigures task) {
        TaskFigures.Planned plan = task.planned();
        if (plan == null) {
            return;
        }
        BigDecimal planned = plan.labour() == null ? BigDecimal.ZERO : plan.labour();
        if (!task.settled()) {
            share(task, Cause.OPEN_TASKS, task.labour().subtract(planned), hours(task.minutes() - plan.minutes()));
            return;
        }
        BigDecimal hoursPlanned = hours(plan.minutes());
        BigDecimal rate =
                plan.minutes() == 0 ? BigDecimal.ZERO : planned.multiply(HOUR).divide(minutes(plan), PRECISE);
        BigDecimal allowed = allowedHours(task, plan, hoursPlanned);
        BigDecimal worked = hours(task.rateMinutes());
        BigDecimal again = hours(task.otherMinutes());
        share(task, Cause.QUANTITY, Variances.quantity(allowed, hoursPlanned, rate), allowed.subtract(hoursPlanned));
        share(task, Cause.EFFICIENCY, Variances.efficiency(worked, allowed, rate), worked.subtract(allowed));
        share(task, Cause.REWORK, Variances.quantity(again, BigDecimal.ZERO, rate), again);
        share(task, Cause.RATE, task.labour().subtract(worked.add(again).multiply(rate)), null);
    }

    /** Hours that the quantity really done should have taken at the hours per unit that were planned. */
    private static BigDecimal allowedHours(TaskFigures task, TaskFigures.Planned plan, BigDecimal hoursPlanned) {
        BigDecimal done = task.quantityDone();
        return done == null || plan.quantity().signum() == 0
                ? hoursPlanned
                : hoursPlanned.multiply(done).divide(plan.quantity(), PRECISE);
    }

    private void material(MaterialFigures material, boolean closed) {
        MaterialFigures.Planned plan = material.planned();
        if (plan == null) {
            share(material, Cause.LOOSE_MATERIAL, material.cost(), null);
            return;
        }
        BigDecimal price = plan.amount().subtract(plan.freight()).divide(plan.quantity(), PRECISE);
        BigDecimal dearer =
                material.cost().subtract(material.charged().multiply(price)).subtract(plan.freight());
        if (!closed && material.charged().signum() <= 0) {
            share(material, Cause.OPEN_MATERIAL, material.cost().subtract(plan.amount()), null);
            return;
        }
        share(material, Cause.MATERIAL_PRICE, dearer, null);
        BigDecimal net = material.net();
        if (!closed || net == null) {
            Cause cause = closed ? Cause.MATERIAL_USAGE : Cause.OPEN_MATERIAL;
            share(material, cause, Variances.quantity(material.charged(), plan.quantity(), price), null);
        } else {
            BigDecimal allowed = plan.quantity().multiply(net).divide(plan.net(), PRECISE);
            share(material, Cause.MATERIAL_QUANTITY, Variances.quantity(allowed, plan.quantity(), price), null);
            share(material, Cause.MATERIAL_YIELD, Variances.quantity(material.charged(), allowed, price), null);
        }
    }

    /** A bid priced at a confidence holds the expected hours and material, which are more than its lines name. */
    private void beyondLines(CostSums planned, List<TaskFigures> tasks, List<MaterialFigures> materials) {
        BigDecimal labour = planned.labour();
        int minutes = planned.minutes();
        for (TaskFigures task : tasks) {
            TaskFigures.Planned plan = task.planned();
            if (plan != null) {
                labour = labour.subtract(plan.labour() == null ? BigDecimal.ZERO : plan.labour());
                minutes -= plan.minutes();
            }
        }
        BigDecimal material = planned.material();
        for (MaterialFigures line : materials) {
            MaterialFigures.Planned plan = line.planned();
            material = plan == null ? material : material.subtract(plan.amount());
        }
        if (labour.abs().compareTo(CENTS) >= 0) {
            add(Cause.BEYOND_LINES, labour.negate(), hours(-minutes));
        }
        if (material.abs().compareTo(CENTS) >= 0) {
            add(Cause.BEYOND_LINES, material.negate(), null);
        }
    }

    private void share(SplitSource source, Cause cause, BigDecimal amount, @Nullable BigDecimal inHours) {
        shares.add(cause, source, amount, inHours);
        add(cause, amount, inHours);
    }

    private void add(Cause cause, BigDecimal amount, @Nullable BigDecimal inHours) {
        amounts.merge(cause, amount, BigDecimal::add);
        if (inHours != null) {
            hours.merge(cause, inHours, BigDecimal::add);
        }
    }

    private List<SplitLine> lines(BigDecimal difference) {
        List<SplitLine> lines = new ArrayList<>();
        BigDecimal left = difference;
        for (Map.Entry<Cause, BigDecimal> part : amounts.entrySet()) {
            BigDecimal amount = part.getValue().setScale(2, RoundingMode.HALF_EVEN);
            Integer inMinutes = SplitShares.wholeMinutes(hours.get(part.getKey()));
            left = left.subtract(amount);
            if (amount.signum() != 0 || (inMinutes != null && inMinutes != 0)) {
                lines.add(new SplitLine(part.getKey(), amount, inMinutes));
            }
        }
        if (left.signum() != 0) {
            lines.add(new SplitLine(Cause.ROUNDING, left, null));
        }
        return lines;
    }

    private static BigDecimal minutes(TaskFigures.Planned plan) {
        return BigDecimal.valueOf(plan.minutes());
    }

    private static BigDecimal hours(int minutes) {
        return BigDecimal.valueOf(minutes).divide(HOUR, PRECISE);
    }
}
