package org.tallywright.calibration.engine.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class CommonDrawsTest {

    private final CommonDraws draws = new CommonDraws(2000, 7);

    @Test
    void aStreamIsTheSameEveryTimeAndOnEveryMachine() {
        assertThat(draws.normals("kind a")).isEqualTo(new CommonDraws(2000, 7).normals("kind a"));
        assertThat(draws.normals("kind a")).isNotEqualTo(draws.normals("kind b"));
        assertThat(draws.normals("kind a")).isNotEqualTo(new CommonDraws(2000, 8).normals("kind a"));
    }

    @Test
    void everyStreamHasExactlyTheNormalShape() {
        double[] sorted = draws.normals("anything");
        Arrays.sort(sorted);
        assertThat(sorted[999]).isCloseTo(-sorted[1000], within(1e-12));
        assertThat(sorted[1599]).isCloseTo(NormalTable.quantile(1599.5 / 2000), within(1e-12));
    }

    @Test
    void streamsAreUncorrelated() {
        for (int k = 0; k < 50; k++) {
            double[] a = draws.normals("task " + k);
            double[] b = draws.normals("task " + (k + 1));
            double sum = 0;
            for (int d = 0; d < a.length; d++) {
                sum += a[d] * b[d] / a.length;
            }
            assertThat(sum).as("4.5 standard errors").isCloseTo(0, within(0.1));
        }
    }

    @Test
    void ranksOrderTheValues() {
        assertThat(CommonDraws.ranks(new double[] {0.3, -2, 0, 5, -1e-4})).containsExactly(3, 0, 2, 4, 1);
    }

    @Test
    void ranksAreAPermutationThatSorts() {
        double[] values = draws.normals("some");
        int[] ranks = CommonDraws.ranks(values);
        double[] placed = new double[values.length];
        java.util.Arrays.fill(placed, Double.NaN);
        for (int k = 0; k < values.length; k++) {
            placed[ranks[k]] = values[k];
        }
        assertThat(placed).isSorted().doesNotContain(Double.NaN);
        assertThat(CommonDraws.ranks(new double[] {4, 4, 4})).containsExactly(0, 1, 2);
    }

    @Test
    void refusesACountThatIsNotAMultipleOf200() {
        assertThatThrownBy(() -> new CommonDraws(2100, 1)).isInstanceOf(IllegalArgumentException.class);
    }
}
