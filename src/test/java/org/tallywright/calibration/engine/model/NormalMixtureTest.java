package org.tallywright.calibration.engine.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

class NormalMixtureTest {

    private final NormalMixture mixture = new NormalMixture(
            new double[] {0.5, 0.3, 0.2}, new double[] {0.1, -0.4, 1.5}, new double[] {0.3, 0.9, 0.2});

    @Test
    void tableAgreesWithTheLibrary() {
        NormalDistribution library = new NormalDistribution(0, 1);
        for (double z = -9; z <= 9; z += 0.00371) {
            assertThat(NormalTable.cdf(z)).isCloseTo(library.cumulativeProbability(z), within(1e-10));
        }
        assertThat(NormalTable.upperTail(10) / 7.61985302416e-24).isCloseTo(1, within(1e-9));
    }

    @Test
    void quantilesAreTheInverseOfTheDistribution() {
        double[] quantiles = mixture.quantiles();
        for (int m = 0; m < quantiles.length; m++) {
            assertThat(mixture.cdf(quantiles[m])).isCloseTo((m + 0.5) / 200, within(1e-8));
        }
    }

    @Test
    void truncationKeepsTheShapeAboveTheFloorAndRenormalises() {
        double[] quantiles = mixture.quantilesAbove(0.4);
        double above = 1 - mixture.cdf(0.4);
        for (int m = 0; m < quantiles.length; m++) {
            assertThat(quantiles[m]).isGreaterThanOrEqualTo(0.4);
            assertThat((mixture.cdf(quantiles[m]) - mixture.cdf(0.4)) / above).isCloseTo((m + 0.5) / 200, within(1e-6));
        }
    }

    /** Mean of a standard normal above t is density(t)/tail(t), the inverse Mills ratio. */
    @Test
    void truncatedMeanIsTheInverseMillsRatio() {
        for (double t : new double[] {-1, 0, 1, 3, 6, 20}) {
            double mean = java.util.Arrays.stream(NormalMixture.of(0, 1).quantilesAbove(t))
                    .average()
                    .orElseThrow();
            double mills = NormalTable.density(t) / NormalTable.upperTail(t);
            assertThat(mean - t).as("floor " + t).isCloseTo(mills - t, within(0.01 * (mills - t)));
        }
    }

    @Test
    void aFloorBeyondReachLeavesTheFloor() {
        assertThat(NormalMixture.of(0, 0.1).quantilesAbove(10)).containsOnly(10);
    }
}
