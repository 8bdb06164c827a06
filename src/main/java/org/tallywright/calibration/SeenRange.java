package org.tallywright.calibration;

import java.util.Arrays;
import java.util.Optional;
import org.tallywright.calibration.engine.Distribution;

/**
 * What some past figures were, with nothing learnt from them: the middle one, the ends, and the range that held four times
 * in five. With fewer than ten figures none lies outside that range, so it says no more than the ends do.
 *
 * @param low the lower end of the range that held four times in five; it means something only with {@link #enough}
 */
public record SeenRange(int n, double median, double lowest, double highest, double low, double high) {
    private static final int ENOUGH = 10;

    /** Empty without any; each figure weighs the same. */
    public static Optional<SeenRange> of(double[] figures) {
        if (figures.length == 0) {
            return Optional.empty();
        }
        double[] draws = new double[figures.length * Distribution.SIZE];
        for (int i = 0; i < figures.length; i++) {
            Arrays.fill(draws, i * Distribution.SIZE, (i + 1) * Distribution.SIZE, figures[i]);
        }
        Distribution all = Distribution.ofDraws(draws);
        return Optional.of(new SeenRange(
                figures.length,
                all.median(),
                Arrays.stream(figures).min().orElseThrow(),
                Arrays.stream(figures).max().orElseThrow(),
                all.low80(),
                all.high80()));
    }

    /** Whether there are figures enough for a range that holds four times in five. */
    public boolean enough() {
        return n >= ENOUGH;
    }
}
