package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Bars and parts with the kerf added to both, so that nothing after this has to think of it.
 *
 * @param sizes of the parts, longest first, each one larger by a kerf
 * @param demand how many of each
 * @param capacities usable length of each kind of stock, larger by a kerf
 * @param costs length bought with one of each stock; 0 for what is owned
 * @param counts how many of each stock there are
 */
record BarProblem(long[] sizes, int[] demand, long[] capacities, long[] costs, int[] counts) {

    static BarProblem of(List<BarStock> stock, Map<Long, Deque<Integer>> byLength, long kerf, long trim) {
        return new BarProblem(
                byLength.keySet().stream().mapToLong(length -> length + kerf).toArray(),
                byLength.values().stream().mapToInt(Deque::size).toArray(),
                stock.stream().mapToLong(s -> s.length() - 2 * trim + kerf).toArray(),
                stock.stream().mapToLong(s -> s.owned() ? 0 : s.length()).toArray(),
                stock.stream().mapToInt(BarStock::count).toArray());
    }

    int parts() {
        return sizes.length;
    }

    int stocks() {
        return capacities.length;
    }

    boolean isLimited(int stock) {
        return counts[stock] != BarStock.ANY;
    }

    /** The step in which the bought length can grow. */
    long step() {
        long step = 0;
        for (long cost : costs) {
            step = gcd(step, cost);
        }
        return step;
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /**
     * Longest part first, each into the first open bar it fits. Owned bars are opened first, the shortest that takes the
     * part; a bar bought for the last parts shrinks to the shortest that holds them.
     */
    BarPacking firstFit(int[] parts, int[] left) {
        int[] stockLeft = left.clone();
        List<Open> open = new ArrayList<>();
        List<Integer> order = IntStream.range(0, stocks())
                .boxed()
                .sorted(Comparator.comparing((Integer s) -> costs[s] > 0).thenComparing(s -> capacities[s]))
                .toList();
        int missing = 0;
        for (int type = 0; type < parts.length; type++) {
            int from = 0;
            for (int n = 0; n < parts[type]; n++) {
                while (from < open.size() && open.get(from).room < sizes[type]) {
                    from++;
                }
                if (from == open.size() && !opened(open, order, stockLeft, sizes[type])) {
                    missing += parts[type] - n;
                    break;
                }
                open.get(from).take(type, sizes[type]);
            }
        }
        return closed(open, missing);
    }

    private boolean opened(List<Open> open, List<Integer> order, int[] stockLeft, long size) {
        int longest = -1;
        for (int stock : order) {
            if (capacities[stock] >= size && stockLeft[stock] > 0) {
                if (costs[stock] == 0) {
                    longest = stock;
                    break;
                }
                longest = stock;
            }
        }
        if (longest < 0) {
            return false;
        }
        if (isLimited(longest)) {
            stockLeft[longest]--;
        }
        open.add(new Open(longest, capacities[longest], new int[parts()]));
        return true;
    }

    private BarPacking closed(List<Open> open, int missing) {
        List<BarPacking.Load> loads = new ArrayList<>();
        long bought = 0;
        for (Open bar : open) {
            int stock = shortest(bar);
            bought += costs[stock];
            loads.add(new BarPacking.Load(stock, bar.pattern));
        }
        return new BarPacking(loads, missing, bought);
    }

    private int shortest(Open bar) {
        int best = bar.stock;
        long used = capacities[bar.stock] - bar.room;
        for (int stock = 0; stock < stocks() && costs[bar.stock] > 0; stock++) {
            if (!isLimited(stock) && capacities[stock] >= used && costs[stock] < costs[best]) {
                best = stock;
            }
        }
        return best;
    }

    private static final class Open {
        final int stock;
        final int[] pattern;
        long room;

        Open(int stock, long room, int[] pattern) {
            this.stock = stock;
            this.room = room;
            this.pattern = pattern;
        }

        void take(int type, long size) {
            pattern[type]++;
            room -= size;
        }
    }
}
