package org.tallywright.cutting;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Cuts parts of given lengths from bars so that the least length is bought; what lies in the shop is used first.
 *
 * <p>Kerf: a bar gives n parts where the sum of (part + kerf) is at most usable length + kerf, since the last part needs
 * no cut behind it. Trim is taken off both ends, its cut included.
 *
 * <p>Method: linear program over cutting patterns, new ones priced by a bounded knapsack (Gilmore and Gomory 1961), then
 * rounding by diving with limited discrepancy. The search ends by a count of nodes, never by the clock.
 */
public final class BarPlanner {
    static final int MOST_LENGTHS = 200;

    private BarPlanner() {}

    /** @param trim at each end */
    public static BarPlan plan(List<BarStock> stock, List<BarPart> parts, long kerf, long trim) {
        if (kerf < 0 || trim < 0) {
            throw new IllegalArgumentException("kerf and trim are 0 or more");
        }
        Map<Long, Deque<Integer>> byLength = byLength(parts);
        BarProblem problem = BarProblem.of(stock, byLength, kerf, trim);
        boolean coarse = byLength.size() > MOST_LENGTHS;
        PatternDive dive = new PatternDive(problem);
        BarPacking packing = coarse ? problem.firstFit(problem.demand(), problem.counts()) : dive.best();
        List<BarPlan.Bar> bars = new ArrayList<>();
        for (BarPacking.Load load : packing.loads()) {
            bars.add(bar(load, problem, byLength, stock, kerf, trim));
        }
        List<Integer> unplaced = new ArrayList<>();
        byLength.values().forEach(unplaced::addAll);
        bars.sort(Comparator.comparing((BarPlan.Bar b) -> !stock.get(b.stock()).owned())
                .thenComparing(BarPlan.Bar::stock)
                .thenComparing(b -> b.parts().toString()));
        Answer answer = coarse ? Answer.COARSE : dive.isProved() ? Answer.PROVED : Answer.SEARCHED;
        return new BarPlan(bars, unplaced.stream().sorted().toList(), answer, coarse ? 0 : dive.bound());
    }

    /** Longest first; one entry for each single part. */
    private static Map<Long, Deque<Integer>> byLength(List<BarPart> parts) {
        Map<Long, Deque<Integer>> byLength = new TreeMap<>(Comparator.reverseOrder());
        for (int i = 0; i < parts.size(); i++) {
            for (int n = 0; n < parts.get(i).count(); n++) {
                byLength.computeIfAbsent(parts.get(i).length(), l -> new ArrayDeque<>())
                        .add(i);
            }
        }
        return byLength;
    }

    private static BarPlan.Bar bar(
            BarPacking.Load load,
            BarProblem problem,
            Map<Long, Deque<Integer>> byLength,
            List<BarStock> stock,
            long kerf,
            long trim) {
        List<Integer> cut = new ArrayList<>();
        long left = stock.get(load.stock()).length() - 2 * trim;
        for (int type = 0; type < load.pattern().length; type++) {
            long length = problem.sizes()[type] - kerf;
            for (int n = 0; n < load.pattern()[type]; n++) {
                Deque<Integer> queue = byLength.get(length);
                if (queue == null || queue.isEmpty()) {
                    throw new IllegalStateException("more parts were laid out than asked for");
                }
                cut.add(queue.remove());
                left -= length + kerf;
            }
        }
        // The last part needs no cut behind it where it ends at the end of the usable length.
        return new BarPlan.Bar(load.stock(), List.copyOf(cut), Math.max(0, left));
    }
}
