package org.tallywright.costing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.tallywright.costing.JobFigures.Loose;
import org.tallywright.costing.JobFigures.Part;
import org.tallywright.shared.HourClass;

/** A job's logged hours, summed in the ways that a review shows them. */
record Hourlies(List<CostRows.Logged> rows) {

    /** What stands on one task. */
    record OnTask(int rateMinutes, int otherMinutes, BigDecimal labour) {
        static final OnTask NOTHING = new OnTask(0, 0, BigDecimal.ZERO);

        OnTask plus(CostRows.Logged row) {
            boolean rate = HourClass.of(row.hourClass()).countsInRate();
            return new OnTask(
                    rateMinutes + (rate ? row.minutes() : 0),
                    otherMinutes + (rate ? 0 : row.minutes()),
                    labour.add(row.labour()));
        }
    }

    Map<UUID, OnTask> byTask() {
        Map<UUID, OnTask> sums = new HashMap<>();
        for (CostRows.Logged row : rows) {
            UUID task = row.taskId();
            if (task != null) {
                sums.put(task, sums.getOrDefault(task, OnTask.NOTHING).plus(row));
            }
        }
        return sums;
    }

    int minutes() {
        return rows.stream().mapToInt(CostRows.Logged::minutes).sum();
    }

    int unpricedMinutes() {
        return rows.stream().mapToInt(CostRows.Logged::unpriced).sum();
    }

    BigDecimal labour() {
        return rows.stream().map(CostRows.Logged::labour).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** In the order of {@link HourClass}. */
    List<Part> classes() {
        List<Part> parts = new ArrayList<>();
        for (HourClass hourClass : HourClass.values()) {
            List<CostRows.Logged> some = rows.stream()
                    .filter(row -> row.hourClass().equals(hourClass.code()))
                    .toList();
            if (!some.isEmpty()) {
                Hourlies all = new Hourlies(some);
                parts.add(new Part(hourClass.code(), hourClass.label(), all.minutes(), all.labour()));
            }
        }
        return parts;
    }

    /** Whoever logged most first. */
    List<Part> people() {
        Map<UUID, Part> parts = new LinkedHashMap<>();
        for (CostRows.Logged row : rows) {
            Part one = new Part(row.personId().toString(), row.person(), row.minutes(), row.labour());
            parts.merge(
                    row.personId(),
                    one,
                    (a, b) -> new Part(
                            a.key(),
                            a.name(),
                            a.minutes() + b.minutes(),
                            a.labour().add(b.labour())));
        }
        return parts.values().stream()
                .sorted(Comparator.comparingInt(Part::minutes).reversed().thenComparing(Part::key))
                .toList();
    }

    /** @param named names of the tasks that are on no estimate line */
    List<Loose> loose(Map<UUID, String> named) {
        Map<List<Object>, Loose> sums = new LinkedHashMap<>();
        for (CostRows.Logged row : rows) {
            UUID task = row.taskId();
            if (task == null || named.containsKey(task)) {
                String name = task == null ? "" : Objects.requireNonNull(named.get(task));
                Loose one = new Loose(task, name, row.hourClass(), row.minutes(), row.labour());
                List<Object> key = List.of(task == null ? "" : task, row.hourClass());
                sums.merge(key, one, Hourlies::sum);
            }
        }
        return sums.values().stream()
                .sorted(Comparator.comparingInt(Loose::minutes)
                        .reversed()
                        .thenComparing(Loose::name)
                        .thenComparing(Loose::hourClass))
                .toList();
    }

    private static Loose sum(Loose a, Loose b) {
        return new Loose(
                a.taskId(),
                a.name(),
                a.hourClass(),
                a.minutes() + b.minutes(),
                a.labour().add(b.labour()));
    }
}
