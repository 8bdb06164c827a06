package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The linear program of cutting stock: least length bought, every demand met exactly by patterns in fractional numbers.
 * Primal simplex with the inverse of the basis kept in full; patterns are made as they are asked for and kept in a pool
 * for the next program.
 */
final class PatternProgram {
    private static final double TINY = 1e-9;
    private static final int MOST_PIVOTS = 20_000;

    /** A pattern for one kind of stock. */
    record Column(int stock, int[] pattern) {
        String key() {
            return stock + Arrays.toString(pattern);
        }
    }

    /**
     * @param cost of the fractional answer, in lengths of the longest stock
     * @param exact false where pricing or pivoting was cut short, and the cost is then no bound
     */
    record Solution(double cost, Map<Column, Double> amounts, boolean exact) {}

    private final BarProblem problem;
    private final double scale;
    private final List<Column> pool = new ArrayList<>();
    private final Map<String, Column> known = new HashMap<>();
    private long work;

    PatternProgram(BarProblem problem) {
        this.problem = problem;
        this.scale = Math.max(1, Arrays.stream(problem.costs()).max().orElse(1));
        for (int stock = 0; stock < problem.stocks(); stock++) {
            for (int part = 0; part < problem.parts(); part++) {
                int fits = (int) Math.min(problem.demand()[part], problem.capacities()[stock] / problem.sizes()[part]);
                if (fits > 0 && problem.capacities()[stock] > 0) {
                    int[] pattern = new int[problem.parts()];
                    pattern[part] = fits;
                    add(new Column(stock, pattern));
                }
            }
        }
    }

    void add(Column column) {
        if (known.putIfAbsent(column.key(), column) == null) {
            pool.add(column);
        }
    }

    /** Arithmetic done so far, roughly in single steps. */
    long work() {
        return work;
    }

    double scale() {
        return scale;
    }

    private double cost(int stock) {
        return problem.costs()[stock] / scale;
    }

    Solution solve(int[] demand, int[] stockLeft, Set<String> banned) {
        return new Run(demand, stockLeft, banned).solve();
    }

    private final class Run {
        private final int[] demand;
        private final int[] stockLeft;
        private final Set<String> banned;
        private final int[] partRow;
        private final int[] stockRow;
        private final int rows;
        private final double[][] inverse;
        private final double[] amount;
        private final double[] basisCost;
        private final @Nullable Column[] basis;
        private boolean exact = true;

        Run(int[] demand, int[] stockLeft, Set<String> banned) {
            this.demand = demand;
            this.stockLeft = stockLeft;
            this.banned = banned;
            partRow = new int[problem.parts()];
            stockRow = new int[problem.stocks()];
            int row = 0;
            for (int i = 0; i < partRow.length; i++) {
                partRow[i] = demand[i] > 0 ? row++ : -1;
            }
            for (int s = 0; s < stockRow.length; s++) {
                stockRow[s] = problem.isLimited(s) ? row++ : -1;
            }
            rows = row;
            inverse = new double[rows][rows];
            amount = new double[rows];
            basisCost = new double[rows];
            basis = new Column[rows];
            start();
        }

        /** Parts left out at a price no pattern has, stock left unused at none. */
        private void start() {
            for (int i = 0; i < rows; i++) {
                inverse[i][i] = 1;
            }
            for (int i = 0; i < partRow.length; i++) {
                if (partRow[i] >= 0) {
                    amount[partRow[i]] = demand[i];
                    basisCost[partRow[i]] = 1000;
                }
            }
            for (int s = 0; s < stockRow.length; s++) {
                if (stockRow[s] >= 0) {
                    amount[stockRow[s]] = stockLeft[s];
                }
            }
        }

        Solution solve() {
            for (int pivot = 0; pivot < MOST_PIVOTS; pivot++) {
                double[] duals = duals();
                work += (long) rows * rows + (long) pool.size() * rows / 2;
                Column entering = bestOfPool(duals);
                if (entering == null) {
                    entering = priced(duals);
                }
                if (entering == null) {
                    return solution();
                }
                if (!pivot(entering)) {
                    break;
                }
            }
            exact = false;
            return solution();
        }

        private double[] duals() {
            double[] duals = new double[rows];
            for (int r = 0; r < rows; r++) {
                if (basisCost[r] != 0) {
                    for (int c = 0; c < rows; c++) {
                        duals[c] += basisCost[r] * inverse[r][c];
                    }
                }
            }
            return duals;
        }

        private @Nullable Column bestOfPool(double[] duals) {
            Column best = null;
            double least = -1e-7;
            for (Column column : pool) {
                double reduced = reduced(column, duals);
                if (reduced < least && isProper(column) && !banned.contains(column.key())) {
                    least = reduced;
                    best = column;
                }
            }
            return best;
        }

        private double reduced(Column column, double[] duals) {
            double reduced = cost(column.stock);
            for (int i = 0; i < column.pattern.length; i++) {
                if (column.pattern[i] != 0 && partRow[i] >= 0) {
                    reduced -= column.pattern[i] * duals[partRow[i]];
                }
            }
            return stockRow[column.stock] < 0 ? reduced : reduced - duals[stockRow[column.stock]];
        }

        /** No more of a part than is still wanted: a tighter program than the classic one. */
        private boolean isProper(Column column) {
            if (stockLeft[column.stock] == 0) {
                return false;
            }
            for (int i = 0; i < column.pattern.length; i++) {
                if (column.pattern[i] > demand[i]) {
                    return false;
                }
            }
            return true;
        }

        private @Nullable Column priced(double[] duals) {
            double[] values = new double[problem.parts()];
            for (int i = 0; i < values.length; i++) {
                values[i] = partRow[i] < 0 ? 0 : duals[partRow[i]];
            }
            Knapsack knapsack = new Knapsack(problem.sizes(), values, demand);
            Column best = null;
            double least = -1e-7;
            for (int stock = 0; stock < problem.stocks(); stock++) {
                if (stockLeft[stock] == 0) {
                    continue;
                }
                double price = cost(stock) - (stockRow[stock] < 0 ? 0 : duals[stockRow[stock]]);
                int[] pattern = knapsack.best(problem.capacities()[stock], price + 1e-7);
                exact &= knapsack.isExact();
                work += 4 * knapsack.steps();
                Column column = pattern == null ? null : new Column(stock, pattern);
                if (column != null && !banned.contains(column.key()) && reduced(column, duals) < least) {
                    least = reduced(column, duals);
                    best = column;
                } else if (column != null && banned.contains(column.key())) {
                    exact = false;
                }
            }
            if (best != null) {
                add(best);
            }
            return best;
        }

        private boolean pivot(Column entering) {
            double[] direction = new double[rows];
            for (int r = 0; r < rows; r++) {
                double sum = stockRow[entering.stock] < 0 ? 0 : inverse[r][stockRow[entering.stock]];
                for (int i = 0; i < entering.pattern.length; i++) {
                    if (entering.pattern[i] != 0) {
                        sum += entering.pattern[i] * inverse[r][partRow[i]];
                    }
                }
                direction[r] = sum;
            }
            int leaving = leaving(direction);
            if (leaving < 0) {
                return false;
            }
            replace(leaving, direction, entering);
            return true;
        }

        private int leaving(double[] direction) {
            int leaving = -1;
            double least = Double.MAX_VALUE;
            for (int r = 0; r < rows; r++) {
                if (direction[r] > TINY) {
                    double ratio = Math.max(0, amount[r]) / direction[r];
                    if (ratio < least - TINY
                            || (ratio < least + TINY && leaving >= 0 && direction[r] > direction[leaving])) {
                        least = Math.min(least, ratio);
                        leaving = r;
                    }
                }
            }
            return leaving;
        }

        private void replace(int leaving, double[] direction, Column entering) {
            double by = direction[leaving];
            double step = amount[leaving] / by;
            for (int c = 0; c < rows; c++) {
                inverse[leaving][c] /= by;
            }
            for (int r = 0; r < rows; r++) {
                if (r != leaving && direction[r] != 0) {
                    for (int c = 0; c < rows; c++) {
                        inverse[r][c] -= direction[r] * inverse[leaving][c];
                    }
                    amount[r] -= direction[r] * step;
                }
            }
            amount[leaving] = step;
            basis[leaving] = entering;
            basisCost[leaving] = cost(entering.stock);
        }

        private Solution solution() {
            Map<Column, Double> amounts = new HashMap<>();
            double cost = 0;
            for (int r = 0; r < rows; r++) {
                cost += basisCost[r] * amount[r];
                Column column = basis[r];
                if (column != null && amount[r] > TINY) {
                    amounts.put(column, amount[r]);
                }
            }
            return new Solution(cost, amounts, exact);
        }
    }
}
