package org.tallywright.cutting;

import java.util.Comparator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The most valuable pattern that one bar holds, no part more often than it is wanted: depth first by value for length,
 * cut off by the fractional bound. Ends after a number of steps, and then says that it may have missed the best.
 */
final class Knapsack {
    private static final long MOST_STEPS = 400_000;
    private static final double TINY = 1e-9;

    private final long[] sizes;
    private final double[] values;
    private final int[] most;
    private final int[] order;
    private int[] best = new int[0];
    private double bestValue;
    private long steps;

    Knapsack(long[] sizes, double[] values, int[] most) {
        this.sizes = sizes;
        this.values = values;
        this.most = most;
        this.order = IntStream.range(0, sizes.length)
                .filter(i -> values[i] > TINY && most[i] > 0)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -values[i] / sizes[i]))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** A pattern worth more than {@code least}, or null where there is none. */
    int @Nullable [] best(long capacity, double least) {
        bestValue = least + TINY;
        best = new int[0];
        steps = 0;
        descend(0, capacity, 0, new int[sizes.length]);
        return best.length == 0 ? null : best;
    }

    long steps() {
        return steps;
    }

    boolean isExact() {
        return steps < MOST_STEPS;
    }

    private void descend(int depth, long room, double value, int[] pattern) {
        if (value > bestValue) {
            bestValue = value;
            best = pattern.clone();
        }
        if (depth == order.length || ++steps >= MOST_STEPS || value + bound(depth, room) <= bestValue + TINY) {
            return;
        }
        int type = order[depth];
        int fits = (int) Math.min(most[type], room / sizes[type]);
        for (int n = fits; n >= 0; n--) {
            pattern[type] = n;
            descend(depth + 1, room - n * sizes[type], value + n * values[type], pattern);
        }
        pattern[type] = 0;
    }

    private double bound(int depth, long room) {
        double value = 0;
        long left = room;
        for (int d = depth; d < order.length && left > 0; d++) {
            int type = order[d];
            double fits = Math.min(most[type], (double) left / sizes[type]);
            value += fits * values[type];
            left -= (long) (fits * sizes[type]);
            if (fits < most[type]) {
                break;
            }
        }
        return value;
    }
}
