package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.engine.model.NormalMixture;

class SimilarityTest {

    private final CalibrationSettings settings = CalibrationSettings.standard();
    private final List<Observation> past = SampleShop.shop(50, 3, 2, 21);
    private final LearntTasks learnt = LearntTasks.from(past, settings);
    private final BaseModel base = BaseModel.fit(learnt, settings, SampleShop.DAY.plusDays(60));
    private final Similarity similarity = new Similarity(learnt, base, SampleShop.DAY.plusDays(60));
    private final PlannedTask task = PlannedTask.of("n", "k1", 5).by("w1");

    /** As if heard in full; caution then takes s/(s + 1) of the sum s. */
    private double weight(int i) {
        Observation seen = past.get(i);
        double off = Math.log(seen.estimateHours() / 5) / 0.5;
        double days = 60 - i;
        return Math.pow(0.5, days / 365)
                * Math.exp(-off * off / 2)
                * (seen.kind().equals("k1") ? 1 : 0.05)
                * (seen.workers().get(0).worker().equals("w1") ? 1 : 0.25);
    }

    @Test
    void weightsFollowTheFormula() {
        double sum = 0;
        for (int i = 0; i < past.size(); i++) {
            sum += weight(i);
        }
        assertThat(similarity.weights(task).sum()).isCloseTo(sum * sum / (sum + 1), within(1e-4));
    }

    @Test
    void theMixtureHasTheFormulasDistribution() {
        double[] own = NormalMixture.of(0.2, 0.4).quantiles();
        Similarity.Weights weights = similarity.weights(task);
        double full = 0;
        for (int i = 0; i < past.size(); i++) {
            full += weight(i);
        }
        double heard = full / (full + 1);
        double[] mixed = similarity.mixedWith(own, weights);
        for (int m = 5; m < 200; m += 13) {
            double x = mixed[m] + 1e-9;
            double below = 0;
            for (double q : own) {
                below += q <= x ? 4 / 200.0 : 0;
            }
            for (int i = 0; i < past.size(); i++) {
                below += learnt.logRatio()[i] <= x ? heard * weight(i) : 0;
            }
            double share = below / (weights.sum() + 4);
            assertThat(share).isBetween((m + 0.5) / 200 - 1e-6, (m + 0.5) / 200 + 0.15);
        }
        assertThat(mixed).isSorted();
    }

    @Test
    void nobodyNamedMeansEverybodyCountsAlike() {
        double named = similarity.weights(task).sum();
        double unnamed = similarity.weights(PlannedTask.of("n", "k1", 5)).sum();
        assertThat(unnamed).isGreaterThan(named);
    }

    @Test
    void switchedOffItLeavesTheBaseModel() {
        CalibrationSettings off = settings.withSimilarity(SimilaritySettings.none());
        BaseModel alone = BaseModel.fit(learnt, off, SampleShop.DAY);
        double[] own = NormalMixture.of(0.2, 0.4).quantiles();
        Similarity none = new Similarity(learnt, alone, SampleShop.DAY);
        assertThat(none.mixedWith(own, none.weights(task))).isEqualTo(own);
    }
}
