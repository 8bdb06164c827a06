package org.tallywright;

import java.util.function.Consumer;

/**
 * Tries a property on many drawn inputs: {@code Tries.of(1000, draw -> assertThat(...draw.between(0, 9)...))}. Each try
 * has its own seed, so a failure names the one seed and the values drawn with it;
 * {@code -Dtries.seed=N} starts there instead, and then the first try is the one that failed.
 */
public final class Tries {
    private static final long SEED = 20_261_125L;

    private Tries() {}

    public static void of(int tries, Consumer<Draw> property) {
        long first = Long.getLong("tries.seed", SEED);
        for (long seed = first; seed < first + tries; seed++) {
            Draw draw = new Draw(seed);
            try {
                property.accept(draw);
            } catch (RuntimeException | AssertionError failure) {
                throw new AssertionError("fails with -Dtries.seed=" + seed + " on " + draw, failure);
            }
        }
    }
}
