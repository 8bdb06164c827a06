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

    /** Rank of each value, 0 the smallest; equal values (to 12 digits) in their order. */
    public static int[] ranks(double[] values) {
        int bits = 32 - Integer.numberOfLeadingZeros(values.length);
        long mask = (1L << bits) - 1;
        long[] keys = new long[values.length];
        for (int k = 0; k < values.length; k++) {
            long key = Double.doubleToLongBits(values[k] + 0.0);
            key ^= (key >> 63) & Long.MAX_VALUE;
            keys[k] = (key & ~mask) | k;
        }
        java.util.Arrays.sort(keys);
        int[] ranks = new int[values.length];
        for (int rank = 0; rank < keys.length; rank++) {
            ranks[(int) (keys[rank] & mask)] = rank;
        }
        return ranks;
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
