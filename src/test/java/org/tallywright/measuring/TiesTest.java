package org.tallywright.measuring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

/** Readings that are alike leave a least, a widest and a gap no less open than any others do. */
class TiesTest {
    private static final double STANDARD = 1 / 64.0;
    private static final ToDoubleFunction<double[]> LEAST =
            r -> Arrays.stream(r).min().orElseThrow();
    private static final ToDoubleFunction<double[]> RANGE =
            r -> Arrays.stream(r).max().orElseThrow() - LEAST.applyAsDouble(r);

    /** The difference of two readings has a standard uncertainty of root 2 of one, and its size has the same about nothing. */
    @Test
    void theGapOfTwoEqualWidthsIsAsOpenAsTheirDifference() {
        assertThat(drawn(RANGE, 60, 60)).isCloseTo(Math.sqrt(2) * STANDARD, within(1e-9));
        List<Finding> found = OpeningSums.of(
                Map.of(Reading.BACK_FLOOR, inches("60"), Reading.FRONT_FLOOR, inches("60")),
                inches("1/32"),
                null,
                null);
        Reckoned gap = found.stream()
                .filter(f -> f.sum() == Sum.LARGEST_GAP)
                .findFirst()
                .orElseThrow()
                .figure();
        assertThat(gap.value()).isZero();
        assertThat(gap.plusMinus()).isCloseTo(Math.sqrt(2) / 32, within(1e-9));
    }

    @Test
    void aLeastOfEqualReadingsIsAsOpenAsASimulationSays() {
        for (int count : new int[] {2, 3, 6}) {
            double[] equal = new double[count];
            Arrays.fill(equal, 60);
            assertThat(drawn(LEAST, equal)).isCloseTo(simulated(LEAST, equal), within(STANDARD * 0.05));
            assertThat(drawn(RANGE, equal)).isCloseTo(simulated(RANGE, equal), within(STANDARD * 0.1));
        }
    }

    /** Nearly alike is between: no jump at the tie. */
    @Test
    void nearATieItIsBetween() {
        double[] near = {60, 60.01, 60.02};
        assertThat(drawn(LEAST, near)).isCloseTo(simulated(LEAST, near), within(STANDARD * 0.05));
    }

    @Test
    void farFromATieItIsTheFirstOrder() {
        double[] apart = {60, 61, 62, 63};
        double[] each = {STANDARD, STANDARD, STANDARD, STANDARD};
        assertThat(drawn(LEAST, apart)).isCloseTo(STANDARD, within(1e-12));
        assertThat(drawn(RANGE, apart))
                .isCloseTo(Propagation.through(RANGE, apart, each).standard(), within(1e-9));
    }

    /** Whatever is read, the doubt of the narrowest and of the lowest is never nothing. */
    @Test
    void sixEqualWidthsAreNotExact() {
        Map<Reading, Length> room = new EnumMap<>(Reading.class);
        Reading.Group.WIDTHS.readings().forEach(reading -> room.put(reading, inches("60")));
        Reading.Group.HEIGHTS.readings().forEach(reading -> room.put(reading, inches("96")));
        assertThat(OpeningSums.of(room, inches("1/32"), null, null))
                .filteredOn(f -> List.of(Sum.NARROWEST, Sum.LOWEST, Sum.LARGEST_GAP, Sum.SCRIBE_STOCK)
                        .contains(f.sum()))
                .hasSize(4)
                .allSatisfy(f -> assertThat(f.figure().plusMinus()).isGreaterThan(1 / 32.0));
    }

    private static double drawn(ToDoubleFunction<double[]> figure, double... readings) {
        double[] each = new double[readings.length];
        Arrays.fill(each, STANDARD);
        return Propagation.drawn(figure, readings, each).standard();
    }

    /** Root mean square about the figure shown, from draws of its own. */
    private static double simulated(ToDoubleFunction<double[]> figure, double... readings) {
        Random random = new Random(7);
        double shown = figure.applyAsDouble(readings);
        double squares = 0;
        int tries = 100_000;
        for (int n = 0; n < tries; n++) {
            double off = figure.applyAsDouble(Arrays.stream(readings)
                            .map(r -> r + STANDARD * random.nextGaussian())
                            .toArray())
                    - shown;
            squares += off * off;
        }
        return Math.sqrt(squares / tries);
    }

    private static Length inches(String typed) {
        return Length.parse(typed, Units.IMPERIAL);
    }
}
