package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.tallywright.Tries;

/** Worked by hand from the figures themselves. */
class SeenRangeTest {
    @Test
    void saysNothingOfNothing() {
        assertThat(SeenRange.of(new double[0])).isEmpty();
    }

    @Test
    void tellsThreeByTheirMiddleAndTheirEnds() {
        SeenRange three = SeenRange.of(new double[] {14, 8, 9.5}).orElseThrow();

        assertThat(three.n()).isEqualTo(3);
        assertThat(three.median()).isCloseTo(9.5, within(1e-9));
        assertThat(three.lowest()).isEqualTo(8);
        assertThat(three.highest()).isEqualTo(14);
        assertThat(three.enough()).isFalse();
    }

    /** 1 to 10: the middle lies between 5 and 6; a tenth lies below 1.5, halfway from the first to the second, a tenth above 9.5. */
    @Test
    void givesTenARangeThatHoldsEightOfThem() {
        SeenRange ten = SeenRange.of(
                        IntStream.rangeClosed(1, 10).asDoubleStream().toArray())
                .orElseThrow();

        assertThat(ten.enough()).isTrue();
        assertThat(ten.median()).isCloseTo(5.5, within(1e-9));
        assertThat(ten.low()).isCloseTo(1.5, within(1e-9));
        assertThat(ten.high()).isCloseTo(9.5, within(1e-9));
    }

    @Test
    void needsTenForARange() {
        assertThat(SeenRange.of(new double[9]).orElseThrow().enough()).isFalse();
        assertThat(SeenRange.of(new double[10]).orElseThrow().enough()).isTrue();
    }

    @Test
    void ordersItsFiguresWhateverTheyAre() {
        Tries.of(200, draw -> {
            double[] figures = draw.list(1, 40, () -> draw.between(1, 5_000)).stream()
                    .mapToDouble(tenth -> tenth / 10.0)
                    .toArray();
            SeenRange range = SeenRange.of(figures).orElseThrow();

            assertThat(range.lowest()).isLessThanOrEqualTo(range.low() + 1e-9);
            assertThat(range.low()).isLessThanOrEqualTo(range.median() + 1e-9);
            assertThat(range.median()).isLessThanOrEqualTo(range.high() + 1e-9);
            assertThat(range.high()).isLessThanOrEqualTo(range.highest() + 1e-9);
            long inside = Arrays.stream(figures)
                    .filter(f -> f >= range.low() - 1e-9 && f <= range.high() + 1e-9)
                    .count();
            assertThat(inside * 10).isGreaterThanOrEqualTo(figures.length * 8L - 20);
        });
    }
}
