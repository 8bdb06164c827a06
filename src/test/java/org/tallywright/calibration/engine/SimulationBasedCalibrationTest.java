package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari and Gelman 2018): shops are drawn from the prior, the base
 * model is fitted to 30 tasks of each, and the truth of a new task and of a new job of 5 tasks is ranked in its forecast.
 *
 * <p>1,500 shops, seed 20260103. The standard error of a coverage of 0.80 is 0.010; tolerance 0.026. An 80 % range 10 % too
 * narrow on the log scale covers 0.75 and is seen: the last test narrows the ranges on purpose.
 */
class SimulationBasedCalibrationTest {

    private static final int SHOPS = 1500;
    private static final double TOLERANCE = 0.026;
    private static final CalibrationSettings BASE = CalibrationSettings.standard()
            .withBase(BaseSettings.standard().withWeightExponent(0))
            .withSimilarity(SimilaritySettings.none())
            .withLimits(Limits.none());

    private static final double[] TASK = new double[SHOPS];
    private static final double[] JOB = new double[SHOPS];
    private static final double[] NARROWED = new double[SHOPS];

    /** One shop drawn from the prior. */
    private static final class Shop {

        final Random random;
        final double level;
        final double slope;
        final double residual;
        final double jobSd;
        final double[] kind = new double[5];
        final double[] worker = new double[3];

        Shop(Random random) {
            this.random = random;
            level = 0.15 + 0.30 * random.nextGaussian();
            slope = 0.15 * random.nextGaussian();
            residual = 0.40 * Math.exp(0.5 * random.nextGaussian());
            jobSd = 0.15 * Math.exp(0.7 * random.nextGaussian());
            fill(kind, 0.15 * Math.exp(0.7 * random.nextGaussian()));
            fill(worker, 0.10 * Math.exp(0.7 * random.nextGaussian()));
        }

        private void fill(double[] effects, double sd) {
            for (int k = 0; k < effects.length; k++) {
                effects[k] = sd * random.nextGaussian();
            }
        }

        Observation task(int id, String job, double jobEffect, int kinds) {
            int k = random.nextInt(kinds);
            int w = random.nextInt(worker.length);
            double estimate = Math.exp(1.5 + 0.8 * random.nextGaussian());
            double y = level + slope * (Math.log(estimate) - 2) + kind[k] + worker[w] + jobEffect;
            double actual = estimate * Math.exp(y + residual * random.nextGaussian());
            return new Observation(
                    "t" + id, job, "k" + k, WorkerShare.alone("w" + w), 1, estimate, actual, SampleShop.DAY, Set.of());
        }

        List<Observation> job(String name, int tasks, int kinds) {
            double effect = jobSd * random.nextGaussian();
            List<Observation> job = new ArrayList<>();
            for (int i = 0; i < tasks; i++) {
                job.add(task(i, name, effect, kinds));
            }
            return job;
        }
    }

    @BeforeAll
    static void drawShops() {
        Random random = new Random(20_260_103L);
        for (int s = 0; s < SHOPS; s++) {
            Shop shop = new Shop(random);
            List<Observation> past = new ArrayList<>();
            for (int j = 0; j < 6; j++) {
                past.addAll(shop.job("j" + j, 5, 4));
            }
            Calibration calibration = Calibrator.fit(past, BASE);
            List<Observation> next = shop.job("next", 5, 5);
            List<PlannedTask> planned = next.stream().map(JobEffects::asPlanned).toList();
            Distribution task = calibration.taskForecast(planned.get(0)).hours();
            Distribution job = calibration.jobForecast(planned).hours();
            double total = next.stream().mapToDouble(Observation::actualHours).sum();
            TASK[s] = task.probabilityBelow(next.get(0).actualHours());
            JOB[s] = job.probabilityBelow(total);
            NARROWED[s] = task.widened(0.9).probabilityBelow(next.get(0).actualHours());
        }
    }

    @Test
    void aNewTaskFallsInItsRangesAsOftenAsStated() {
        assertCalibrated(TASK);
    }

    @Test
    void aNewJobFallsInItsRangesAsOftenAsStated() {
        assertCalibrated(JOB);
    }

    @Test
    void rangesNarrowedOnPurposeAreSeen() {
        assertThat(central80(NARROWED)).isLessThan(0.80 - TOLERANCE);
    }

    private static void assertCalibrated(double[] ranks) {
        assertThat(central80(ranks)).as("central 80 %").isCloseTo(0.80, within(TOLERANCE));
        assertThat(share(ranks, 0, 0.8)).as("under P80").isCloseTo(0.80, within(TOLERANCE));
        assertThat(share(ranks, 0, 0.5)).as("under the median").isCloseTo(0.50, within(0.033));
        double chiSquare = 0;
        double expected = SHOPS / 10.0;
        for (int bin = 0; bin < 10; bin++) {
            double found = SHOPS * share(ranks, bin / 10.0, (bin + 1) / 10.0);
            chiSquare += (found - expected) * (found - expected) / expected;
        }
        assertThat(chiSquare)
                .as("uniform in ten bins: 99.9 % of chi-square with 9 degrees")
                .isLessThan(27.9);
    }

    private static double central80(double[] ranks) {
        return share(ranks, 0.1, 0.9);
    }

    private static double share(double[] ranks, double from, double to) {
        int count = 0;
        for (double rank : ranks) {
            count += rank >= from && rank < to ? 1 : 0;
        }
        return count / (double) ranks.length;
    }
}
