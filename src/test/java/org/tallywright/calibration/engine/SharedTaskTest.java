package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Several people on one task, and site conditions. */
class SharedTaskTest {

    private static final LocalDate DAY = LocalDate.of(2026, 5, 4);

    private static Observation task(int i, List<WorkerShare> workers, Set<String> conditions, double ratio) {
        return new Observation("t" + i, "j" + i / 6, "kind", workers, 4, 1, 4 * ratio, DAY, conditions);
    }

    @Test
    void sharesComeFromLoggedHours() {
        assertThat(WorkerShare.byHours(Map.of("fast", 3.0, "slow", 1.0, "absent", 0.0)))
                .containsExactlyInAnyOrder(new WorkerShare("fast", 0.75), new WorkerShare("slow", 0.25));
        assertThat(WorkerShare.byHours(Map.of())).isEmpty();
    }

    @Test
    void aSharedTaskLiesBetweenItsPeople() {
        Random random = new Random(2);
        List<Observation> tasks = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            boolean fast = i % 2 == 0;
            double ratio = Math.exp((fast ? -0.35 : 0.35) + 0.1 * random.nextGaussian());
            tasks.add(task(i, WorkerShare.alone(fast ? "fast" : "slow"), Set.of(), ratio));
        }
        Calibration calibration =
                Calibrator.fit(tasks, CalibrationSettings.standard().withSimilarity(SimilaritySettings.none()));
        double fast = median(calibration, WorkerShare.alone("fast"));
        double slow = median(calibration, WorkerShare.alone("slow"));
        double both = median(calibration, List.of(new WorkerShare("fast", 0.5), new WorkerShare("slow", 0.5)));
        assertThat(slow / fast).isGreaterThan(1.7);
        assertThat(both).isCloseTo(Math.sqrt(fast * slow), within(0.02 * both));
    }

    @Test
    void sharedTasksAreLearntFromByShare() {
        List<Observation> tasks = new ArrayList<>();
        List<WorkerShare> mostlySlow = List.of(new WorkerShare("fast", 0.1), new WorkerShare("slow", 0.9));
        for (int i = 0; i < 120; i++) {
            tasks.add(
                    i % 2 == 0
                            ? task(i, WorkerShare.alone("fast"), Set.of(), 0.8)
                            : task(i, mostlySlow, Set.of(), 1.4));
        }
        Calibration calibration = SampleShop.fit(tasks);
        assertThat(median(calibration, WorkerShare.alone("slow")))
                .isGreaterThan(1.3 * median(calibration, WorkerShare.alone("fast")));
    }

    @Test
    void aSiteConditionIsOffUntilEnoughJobsHadIt() {
        List<Observation> few = new ArrayList<>();
        List<Observation> many = new ArrayList<>();
        Random random = new Random(4);
        for (int i = 0; i < 120; i++) {
            boolean occupied = i % 12 < 6;
            double ratio = Math.exp((occupied ? 0.3 : 0) + 0.15 * random.nextGaussian());
            Observation task = task(i, WorkerShare.alone("w"), occupied ? Set.of("occupied home") : Set.of(), ratio);
            many.add(task);
            if (i < 12) {
                few.add(task);
            }
        }
        assertThat(SampleShop.fit(few).conditions()).isEmpty();
        ConditionEffect unknown = SampleShop.fit(few).conditionEffect("occupied home");
        assertThat(unknown.counts()).isFalse();
        assertThat(unknown.tasks()).isEqualTo(6);
        assertThat(unknown.jobs()).isEqualTo(1);
        assertThat(unknown.median()).isCloseTo(1, within(0.001));
        assertThat(unknown.high()).isCloseTo(Math.exp(0.15 * 1.2815516), within(0.001));
        Calibration calibration =
                Calibrator.fit(many, CalibrationSettings.standard().withSimilarity(SimilaritySettings.none()));
        assertThat(calibration.conditions()).containsExactly("occupied home");
        ConditionEffect known = calibration.conditionEffect("occupied home");
        assertThat(known.counts()).isTrue();
        assertThat(known.tasks() + known.otherTasks()).isEqualTo(120);
        assertThat(Math.log(known.median())).as("0.3, shrunk").isBetween(0.15, 0.3);
        assertThat(Math.log(known.high()) - Math.log(known.low())).isBetween(0.05, 0.35);
        assertThat(calibration.conditionEffect("stairs").tasks()).isZero();
        double with = calibration
                .taskForecast(new PlannedTask("n", "kind", WorkerShare.alone("w"), 4, Set.of("occupied home")))
                .hours()
                .median();
        double without = median(calibration, WorkerShare.alone("w"));
        assertThat(Math.log(with / without)).as("0.3, shrunk").isBetween(0.15, 0.3);
        assertThat(median(SampleShop.fit(few), WorkerShare.alone("w"))).isPositive();
    }

    private static double median(Calibration calibration, List<WorkerShare> workers) {
        return calibration
                .taskForecast(new PlannedTask("n", "kind", workers, 4, Set.of()))
                .hours()
                .median();
    }
}
