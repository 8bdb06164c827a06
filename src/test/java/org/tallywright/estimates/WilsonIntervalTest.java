package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class WilsonIntervalTest {
    /** The definition itself: at either end, what was counted lies just as far off as chance goes one time in ten. */
    @Test
    void endsWhereTheCountIsJustBelievable() {
        for (int n = 1; n <= 60; n++) {
            for (int k = 0; k <= n; k++) {
                WilsonInterval interval = WilsonInterval.of(k, n);
                double share = (double) k / n;
                assertThat(interval.low()).isBetween(0.0, share);
                assertThat(interval.high()).isBetween(share, 1.0);
                for (double p : new double[] {interval.low(), interval.high()}) {
                    double off = Math.pow(share - p, 2);
                    assertThat(off)
                            .as(k + " of " + n)
                            .isCloseTo(WilsonInterval.Z * WilsonInterval.Z * p * (1 - p) / n, within(1e-12));
                }
            }
        }
    }

    @Test
    void getsNarrowerAndIsTheSameFromBothSides() {
        WilsonInterval few = WilsonInterval.of(5, 10);
        WilsonInterval many = WilsonInterval.of(50, 100);
        assertThat(many.high() - many.low()).isLessThan((few.high() - few.low()) / 2.5);
        assertThat(WilsonInterval.of(3, 10).low())
                .isCloseTo(1 - WilsonInterval.of(7, 10).high(), within(1e-12));
    }

    @Test
    void knowsNothingWithoutACount() {
        assertThatThrownBy(() -> WilsonInterval.of(0, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> WilsonInterval.of(3, 2)).isInstanceOf(IllegalArgumentException.class);
    }
}
