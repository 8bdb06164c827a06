package org.tallywright.costing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.costing.JobFigures.Agreed;
import org.tallywright.costing.JobFigures.Basis;
import org.tallywright.costing.JobFigures.Loose;
import org.tallywright.costing.JobFigures.Other;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.materials.JobMaterials;
import org.tallywright.shared.Money;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;

/** What jobs cost beside what was planned. Holds wages and margins: for the owner only. */
@Service
@Transactional(readOnly = true)
public class JobCosts {
    /** The catalogue's group of what is not material: delivery, disposal. */
    private static final String OTHER = "other";

    private final CostRows rows;
    private final JobMaterials materials;
    private final EstimatePricer pricer;
    private final ShopClock clock;
    private final ShopConventions conventions;

    JobCosts(
            CostRows rows,
            JobMaterials materials,
            EstimatePricer pricer,
            ShopClock clock,
            ShopConventions conventions) {
        this.rows = rows;
        this.materials = materials;
        this.pricer = pricer;
        this.clock = clock;
        this.conventions = conventions;
    }

    /** All figures of the review, up to today. */
    public JobFigures figures(UUID job) {
        return figures(job, clock.today());
    }

    JobFigures figures(UUID job, LocalDate asOf) {
        CostRows.Total total = rows.total(job);
        List<Agreed> agreed = rows.agreed(job);
        Plan plan = agreed.isEmpty() ? estimated(job) : bid(job, agreed);
        Hourlies hours = new Hourlies(rows.logged(job, asOf));
        List<TaskFigures> tasks = tasks(job, plan, hours);
        List<Loose> loose = hours.loose(namesWithoutLine(tasks));
        List<JobMaterials.Row> used = materials.of(job);
        List<MaterialFigures> lines = materialLines(plan, used);
        List<Other> others = others(plan, used);
        CostSums actual = actual(total, hours, lines, others);
        CostSums planned = plan.sums();
        return new JobFigures(
                JobFigures.FORM,
                asOf,
                total.closed(),
                conventions.money(),
                plan.basis(),
                agreed,
                planned,
                actual,
                total.overheadRate(),
                plan.minutes(tasks),
                hours.unpricedMinutes(),
                tasks,
                hours.classes(),
                hours.people(),
                loose,
                rows.again(job, asOf),
                lines,
                others,
                planned == null ? List.of() : split(planned, actual, tasks, loose, lines, total.closed()),
                planned == null
                        ? null
                        : Slack.of(planned, actual, tasks, lines, total.closed())
                                .orElse(null));
    }

    private static List<SplitLine> split(
            CostSums planned,
            CostSums actual,
            List<TaskFigures> tasks,
            List<Loose> loose,
            List<MaterialFigures> materials,
            boolean closed) {
        BigDecimal labour = loose.stream().map(Loose::labour).reduce(BigDecimal.ZERO, BigDecimal::add);
        int minutes = loose.stream().mapToInt(Loose::minutes).sum();
        return CostSplit.of(planned, actual, tasks, labour, minutes, materials, closed);
    }

    /** @param rate of an hour, where tasks are planned by the working sum; null: by their bids, or not at all */
    private record Plan(
            Basis basis,
            @Nullable CostSums sums,
            @Nullable BigDecimal rate,
            List<CostRows.MaterialLine> materials,
            List<CostRows.OtherLine> others) {

        int minutes(List<TaskFigures> tasks) {
            return sums != null
                    ? sums.minutes()
                    : tasks.stream()
                            .map(TaskFigures::planned)
                            .mapToInt(p -> p == null ? 0 : p.minutes())
                            .sum();
        }
    }

    private Plan bid(UUID job, List<Agreed> agreed) {
        CostSums sums = agreed.stream().map(Agreed::amounts).reduce(NOTHING, JobCosts::sum);
        return new Plan(Basis.BID, sums, null, rows.bidMaterials(job), rows.bidOthers(job));
    }

    private static final CostSums NOTHING =
            new CostSums(0, BigDecimal.ZERO, BigDecimal.ZERO, BigDecimal.ZERO, BigDecimal.ZERO, BigDecimal.ZERO);

    private static CostSums sum(CostSums a, CostSums b) {
        BigDecimal price =
                a.price() == null || b.price() == null ? null : a.price().add(b.price());
        return new CostSums(
                a.minutes() + b.minutes(),
                a.labour().add(b.labour()),
                a.overhead().add(b.overhead()),
                a.material().add(b.material()),
                a.other().add(b.other()),
                price);
    }

    /** Nothing is accepted: the working sum is the plan, without a price. */
    private Plan estimated(UUID job) {
        WorkingSum working = pricer.of(job);
        CostSums sums = working.sum()
                .map(sum -> new CostSums(
                        working.sheet().next().hours().minutes(),
                        sum.labour().amount(),
                        sum.overhead().amount(),
                        sum.material().amount(),
                        sum.other().amount(),
                        null))
                .orElse(null);
        BigDecimal rate = working.labourRate().amount().map(Money::amount).orElse(null);
        return new Plan(Basis.ESTIMATE, sums, rate, rows.estimateMaterials(job), rows.estimateOthers(job));
    }

    private List<TaskFigures> tasks(UUID job, Plan plan, Hourlies hours) {
        Map<UUID, Hourlies.OnTask> logged = hours.byTask();
        List<TaskFigures> tasks = new ArrayList<>();
        for (CostRows.TaskRow row : rows.tasks(job)) {
            Hourlies.OnTask on = logged.getOrDefault(row.taskId(), Hourlies.OnTask.NOTHING);
            TaskFigures.Planned planned = planned(plan, row);
            boolean dropped = row.state().equals("dropped");
            boolean offered = row.state().equals("offered");
            boolean silent = on.rateMinutes() + on.otherMinutes() == 0;
            // Dropped, or offered and not agreed, before anything was agreed or done on it: it is not part of the
            // story.
            if ((dropped || offered) && silent && (planned == null || plan.basis() == Basis.ESTIMATE)) {
                continue;
            }
            tasks.add(new TaskFigures(
                    row.taskId(),
                    row.name(),
                    row.pieceName(),
                    row.stageName(),
                    row.unit(),
                    row.state(),
                    planned,
                    dropped ? BigDecimal.ZERO : row.quantityDone(),
                    row.quantityConfirmed(),
                    on.rateMinutes(),
                    on.otherMinutes(),
                    on.labour()));
        }
        return tasks;
    }

    private static TaskFigures.@Nullable Planned planned(Plan plan, CostRows.TaskRow row) {
        if (plan.basis() == Basis.BID) {
            return row.bidLines() == 0
                    ? null
                    : new TaskFigures.Planned(row.bidMinutes(), row.bidQuantity(), row.bidLabourAmount());
        }
        BigDecimal rate = plan.rate();
        BigDecimal labour = rate == null
                ? null
                : rate.multiply(BigDecimal.valueOf(row.estimatedMinutes()))
                        .divide(BigDecimal.valueOf(60), MathContext.DECIMAL128);
        return new TaskFigures.Planned(row.estimatedMinutes(), row.quantity(), labour);
    }

    private static Map<UUID, String> namesWithoutLine(List<TaskFigures> tasks) {
        Map<UUID, String> names = new HashMap<>();
        tasks.stream().filter(t -> t.planned() == null).forEach(t -> names.put(t.taskId(), t.name()));
        return names;
    }

    private static List<MaterialFigures> materialLines(Plan plan, List<JobMaterials.Row> used) {
        Map<UUID, JobMaterials.Row> left = new LinkedHashMap<>();
        used.stream().filter(row -> !row.group().equals(OTHER)).forEach(row -> left.put(row.materialId(), row));
        List<MaterialFigures> lines = new ArrayList<>();
        for (CostRows.MaterialLine line : plan.materials()) {
            UUID id = line.materialId();
            JobMaterials.Row row = id == null ? null : left.remove(id);
            lines.add(material(line, row));
        }
        left.values().forEach(row -> lines.add(material(null, row)));
        return lines;
    }

    private static MaterialFigures material(CostRows.@Nullable MaterialLine line, JobMaterials.@Nullable Row row) {
        return new MaterialFigures(
                line != null ? line.materialId() : row == null ? null : row.materialId(),
                line != null ? line.name() : row == null ? "" : row.name(),
                line != null ? line.unit() : row == null ? "" : row.unit(),
                line == null ? null : line.planned(),
                row == null ? BigDecimal.ZERO : row.charged().amount(),
                row == null || row.net() == null ? null : row.net().amount(),
                row == null ? BigDecimal.ZERO : row.cost().amount());
    }

    /** Lines of other cost, and what was bought of the catalogue's group of that name, paired by name. */
    private static List<Other> others(Plan plan, List<JobMaterials.Row> used) {
        Map<String, Other> byName = new LinkedHashMap<>();
        for (CostRows.OtherLine line : plan.others()) {
            byName.put(line.name().toLowerCase(Locale.ROOT), new Other(line.name(), line.amount(), BigDecimal.ZERO));
        }
        for (JobMaterials.Row row : used) {
            if (row.group().equals(OTHER)) {
                Other spent = new Other(row.name(), BigDecimal.ZERO, row.cost().amount());
                byName.merge(
                        row.name().toLowerCase(Locale.ROOT),
                        spent,
                        (a, b) -> new Other(a.name(), a.planned(), a.actual().add(b.actual())));
            }
        }
        return List.copyOf(byName.values());
    }

    private static CostSums actual(
            CostRows.Total total, Hourlies hours, List<MaterialFigures> materials, List<Other> others) {
        BigDecimal overhead = total.overheadRate()
                .multiply(BigDecimal.valueOf(hours.minutes()))
                .divide(BigDecimal.valueOf(60), 2, RoundingMode.HALF_UP);
        return new CostSums(
                hours.minutes(),
                hours.labour(),
                overhead,
                materials.stream().map(MaterialFigures::cost).reduce(BigDecimal.ZERO, BigDecimal::add),
                others.stream().map(Other::actual).reduce(BigDecimal.ZERO, BigDecimal::add),
                total.sums().price());
    }
}
