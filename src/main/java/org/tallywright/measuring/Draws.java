package org.tallywright.measuring;

import java.util.Random;

/**
 * Standard normal draws from a fixed seed, one row for each reading, so that the same readings give the same doubt every
 * time. The rows are made exactly independent of each other and of spread 1 (Gram and Schmidt): with each draw used on both
 * sides, a figure without a bend gets exactly its first-order doubt, and no chance of the draws rounds it up a mark.
 */
final class Draws {
    static final int COUNT = 1_000;
    private static final long SEED = 20_261_125L;
    private static final double[][] ROWS = rows(Reading.values().length);

    private Draws() {}

    static double of(int reading, int draw) {
        return ROWS[reading][draw];
    }

    private static double[][] rows(int count) {
        Random random = new Random(SEED);
        double[][] rows = new double[count][COUNT];
        for (int n = 0; n < count; n++) {
            double[] row = rows[n];
            for (int draw = 0; draw < COUNT; draw++) {
                row[draw] = random.nextGaussian();
            }
            for (int before = 0; before < n; before++) {
                add(row, rows[before], -product(row, rows[before]) / COUNT);
            }
            double spread = Math.sqrt(product(row, row) / COUNT);
            for (int draw = 0; draw < COUNT; draw++) {
                row[draw] /= spread;
            }
        }
        return rows;
    }

    private static double product(double[] one, double[] other) {
        double sum = 0;
        for (int draw = 0; draw < COUNT; draw++) {
            sum += one[draw] * other[draw];
        }
        return sum;
    }

    private static void add(double[] row, double[] other, double times) {
        for (int draw = 0; draw < COUNT; draw++) {
            row[draw] += times * other[draw];
        }
    }
}
