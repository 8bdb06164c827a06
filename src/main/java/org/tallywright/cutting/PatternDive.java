package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Rounds the fractional answer of the pattern program: takes the whole parts of it, fixes the pattern with the largest
 * fraction, solves again for what is left. Where that ends above the bound it dives anew, at first once, then more often
 * away from its first choice (limited discrepancy).
 */
final class PatternDive {
    private static final int MOST_NODES = 1_500;
    private static final long MOST_WORK = 2_000_000_000L;
    private static final int MOST_DISCREPANCY = 4;
    private static final double TINY = 1e-6;

    private final BarProblem problem;
    private final PatternProgram program;
    private BarPacking best;
    private long bound;
    private int nodes;

    PatternDive(BarProblem problem) {
        this.problem = problem;
        this.program = new PatternProgram(problem);
        this.best = new BarPacking(List.of(), Integer.MAX_VALUE, Long.MAX_VALUE / 4);
    }

    /** Least length that any plan buys; 0 where it was not worked out. */
    long bound() {
        return bound;
    }

    boolean isProved() {
        return best.missing() == 0 && best.bought() <= bound;
    }

    BarPacking best() {
        best = problem.firstFit(problem.demand(), problem.counts());
        best.loads().forEach(load -> program.add(new PatternProgram.Column(load.stock(), load.pattern())));
        PatternProgram.Solution root = program.solve(problem.demand(), problem.counts(), Set.of());
        if (root.exact() && best.missing() == 0) {
            bound = whole(root.cost());
        }
        BarPacking nothing = new BarPacking(List.of(), 0, 0);
        for (int away = 0; away <= MOST_DISCREPANCY && !isProved() && nodes < MOST_NODES; away++) {
            dive(problem.demand(), problem.counts(), nothing, away, Set.of());
        }
        return best;
    }

    private long whole(double cost) {
        long step = problem.step();
        return step == 0 ? 0 : (long) Math.ceil(cost * program.scale() / step - TINY) * step;
    }

    private void dive(int[] demand, int[] stockLeft, BarPacking so, int away, Set<String> banned) {
        if (isProved() || nodes++ >= MOST_NODES || program.work() > MOST_WORK) {
            return;
        }
        BarPacking rest = problem.firstFit(demand, stockLeft);
        keep(so.with(rest.loads(), rest.missing(), rest.bought()));
        PatternProgram.Solution solution = program.solve(demand, stockLeft, banned);
        if (best.missing() == 0 && so.bought() + whole(solution.cost()) >= best.bought()) {
            return;
        }
        Step step = new Step(demand.clone(), stockLeft.clone());
        List<Map.Entry<PatternProgram.Column, Double>> fractions = step.takeWhole(solution.amounts());
        BarPacking now = so.with(step.loads, 0, step.bought);
        if (fractions.isEmpty()) {
            keep(now.with(List.of(), sum(step.demand), 0));
            return;
        }
        Set<String> skipped = new HashSet<>(banned);
        for (int choice = 0; choice <= away && choice < fractions.size(); choice++) {
            PatternProgram.Column column = fractions.get(choice).getKey();
            Step next = new Step(step.demand.clone(), step.stockLeft.clone());
            next.take(column, 1);
            dive(next.demand, next.stockLeft, now.with(next.loads, 0, next.bought), away - choice, Set.copyOf(skipped));
            skipped.add(column.key());
        }
    }

    private void keep(BarPacking found) {
        if (found.isBetterThan(best)) {
            best = found;
        }
    }

    private static int sum(int[] demand) {
        int sum = 0;
        for (int d : demand) {
            sum += d;
        }
        return sum;
    }

    /** Patterns being taken, and what they leave. */
    private final class Step {
        private final int[] demand;
        private final int[] stockLeft;
        private final List<BarPacking.Load> loads = new ArrayList<>();
        private long bought;

        Step(int[] demand, int[] stockLeft) {
            this.demand = demand;
            this.stockLeft = stockLeft;
        }

        /** Takes every whole number; returns the columns with a fraction, the largest first. */
        List<Map.Entry<PatternProgram.Column, Double>> takeWhole(Map<PatternProgram.Column, Double> amounts) {
            List<Map.Entry<PatternProgram.Column, Double>> fractions = new ArrayList<>();
            amounts.entrySet().stream()
                    .sorted(Comparator.comparing((Map.Entry<PatternProgram.Column, Double> e) ->
                            e.getKey().key()))
                    .forEach(e -> {
                        int whole = (int) Math.floor(e.getValue() + TINY);
                        take(e.getKey(), whole);
                        double fraction = e.getValue() - whole;
                        if (fraction > TINY && fits(e.getKey())) {
                            fractions.add(Map.entry(e.getKey(), fraction));
                        }
                    });
            fractions.removeIf(e -> !fits(e.getKey()));
            fractions.sort(Comparator.comparing(e -> -e.getValue()));
            return fractions;
        }

        private boolean fits(PatternProgram.Column column) {
            for (int i = 0; i < demand.length; i++) {
                if (column.pattern()[i] > demand[i]) {
                    return false;
                }
            }
            return stockLeft[column.stock()] > 0;
        }

        void take(PatternProgram.Column column, int times) {
            for (int n = 0; n < times && fits(column); n++) {
                for (int i = 0; i < demand.length; i++) {
                    demand[i] -= column.pattern()[i];
                }
                if (problem.isLimited(column.stock())) {
                    stockLeft[column.stock()]--;
                }
                loads.add(new BarPacking.Load(column.stock(), column.pattern()));
                bought += problem.costs()[column.stock()];
            }
        }
    }
}
