package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DistributionTest {

    private final Distribution evenly = Distribution.ofQuantiles(
            IntStream.range(0, 200).mapToDouble(m -> (m + 0.5) / 2).toArray());

    @Test
    void readsQuantilesBetweenTheKeptOnes() {
        assertThat(evenly.median()).isCloseTo(50, within(1e-9));
        assertThat(evenly.p80()).isCloseTo(80, within(1e-9));
        assertThat(evenly.low80()).isCloseTo(10, within(1e-9));
        assertThat(evenly.mean()).isCloseTo(50, within(1e-9));
        assertThat(evenly.quantile(0)).isEqualTo(0.25);
        assertThat(evenly.quantile(1)).isEqualTo(99.75);
    }

    @Test
    void theRangesUpperEndIsTheNinetiethPercentile() {
        assertThat(evenly.high80()).isEqualTo(evenly.p90());
    }

    @Test
    void drawsKeepTheirMean() {
        double[] draws =
                IntStream.range(0, 2000).mapToDouble(d -> (d * 7919) % 2000).toArray();
        assertThat(Distribution.ofDraws(draws).mean()).isCloseTo(999.5, within(1e-9));
        assertThat(Distribution.ofDraws(draws).quantiles()).isSorted();
    }

    @Test
    void widensAboutItsMedian() {
        Distribution wide = evenly.widened(1.5);
        assertThat(wide.median()).isCloseTo(50, within(0.01));
        assertThat(Math.log(wide.p90() / 50)).isCloseTo(1.5 * Math.log(90 / 50.0), within(0.01));
    }

    @Test
    void storedQuantilesComeBackTheSame() {
        assertThat(Distribution.ofQuantiles(evenly.quantiles())).isEqualTo(evenly);
        assertThat(evenly.times(2).plus(1).median()).isCloseTo(101, within(1e-9));
        assertThatThrownBy(() -> Distribution.ofQuantiles(new double[10])).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void truncatesKeptQuantiles() {
        double[] quantiles = evenly.quantiles();
        double[] above = Truncation.above(quantiles, 60);
        assertThat(above[0]).isGreaterThanOrEqualTo(60);
        assertThat(above[100]).isCloseTo(80.1, within(0.5));
        assertThat(Truncation.above(quantiles, -5)).containsExactly(quantiles, within(1e-9));
        assertThat(Truncation.above(quantiles, 500)).isSorted();
        assertThat(Truncation.above(quantiles, 500)[0]).isGreaterThanOrEqualTo(500);
    }
}
