package org.tallywright.calibration.engine.model;

/**
 * Random numbers that stay the same from one page load to the next.
 *
 * <p>Every uncertain thing of a forecast (one effect, one task) has a stream of its own, found by a name and the seed. A
 * stream is a seeded shuffle of the same {@code count} normal scores Phi^-1((k + 0.5)/count): Latin hypercube sampling, so
 * each stream has exactly the normal distribution's shape and an edit to one task leaves the numbers of the others alone.
 * Source of the generator: SplitMix64 (Steele, Lea and Flood 2014); it needs no state and is the same on every machine.
 */
public final class CommonDraws {

    private static final int DIGIT_BITS = 11;
    private static final int DIGIT = 1 << DIGIT_BITS;
    private static final long STEP = 0x9E3779B97F4A7C15L;

    private final double[] scores;
    private final long seed;

    /** Streams of {@code count} draws, a positive multiple of 200. */
    public CommonDraws(int count, long seed) {
        if (count <= 0 || count % NormalTable.QUANTILES != 0) {
            throw new IllegalArgumentException("draws must be a multiple of 200, not " + count);
        }
        this.scores = NormalTable.scores(count);
        this.seed = seed;
    }

    public int count() {
        return scores.length;
    }

    /** The stream of a name, a new array. */
    public double[] normals(String name) {
        double[] draws = scores.clone();
        long state = mix(seed ^ mix(hash(name)));
        for (int k = draws.length - 1; k > 0; k--) {
            state += STEP;
            int other = (int) (((mix(state) >>> 32) * (k + 1)) >>> 32);
            double kept = draws[k];
            draws[k] = draws[other];
            draws[other] = kept;
        }
        return draws;
    }

    /**
     * Rank of each value, 0 the smallest; values closer than a four-millionth of their range keep their order. Two passes of a
     * radix sort: this is the hot spot of a job's total.
     */
    public static int[] ranks(double[] values) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        double scale = high > low ? (DIGIT * DIGIT - 1) / (high - low) : 0;
        int[] key = new int[values.length];
        int[] order = new int[values.length];
        for (int k = 0; k < values.length; k++) {
            key[k] = (int) ((values[k] - low) * scale);
            order[k] = k;
        }
        order = sorted(sorted(order, key, 0), key, DIGIT_BITS);
        int[] ranks = new int[values.length];
        for (int rank = 0; rank < order.length; rank++) {
            ranks[order[rank]] = rank;
        }
        return ranks;
    }

    private static int[] sorted(int[] order, int[] key, int shift) {
        int[] from = new int[DIGIT + 1];
        for (int k : key) {
            from[((k >> shift) & (DIGIT - 1)) + 1]++;
        }
        for (int digit = 0; digit < DIGIT; digit++) {
            from[digit + 1] += from[digit];
        }
        int[] result = new int[order.length];
        for (int k : order) {
            result[from[(key[k] >> shift) & (DIGIT - 1)]++] = k;
        }
        return result;
    }

    private static long hash(String name) {
        long hash = 0xCBF29CE484222325L;
        for (int k = 0; k < name.length(); k++) {
            hash = (hash ^ name.charAt(k)) * 0x100000001B3L;
        }
        return hash;
    }

    private static long mix(long value) {
        long z = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
