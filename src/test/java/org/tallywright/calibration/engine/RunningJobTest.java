package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tallywright.calibration.engine.SampleShop.fit;
import static org.tallywright.calibration.engine.SampleShop.shop;
import static org.tallywright.calibration.engine.SampleShop.task;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RunningJobTest {

    private final Calibration shop = fit(shop(120, 4, 2, 3));

    private static List<RunningTask> open(double... logged) {
        List<RunningTask> open = new ArrayList<>();
        for (int i = 0; i < logged.length; i++) {
            open.add(new RunningTask(PlannedTask.of("open " + i, "k" + i % 4, 4).by("w0"), logged[i]));
        }
        return open;
    }

    private static List<Observation> finished(int count, double ratio) {
        List<Observation> done = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            done.add(task("done " + i, "now", "k" + i % 4, "w0", 4, 4 * ratio));
        }
        return done;
    }

    @Test
    void beforeAnythingIsDoneItIsTheForecastAtBidTime() {
        RunningForecast running = shop.runningForecast(new RunningJob("now", List.of(), open(0, 0, 0), 0));
        JobForecast bid =
                shop.jobForecast(open(0, 0, 0).stream().map(RunningTask::task).toList());
        assertThat(running.atCompletion().quantiles())
                .containsExactly(bid.hours().quantiles(), within(1e-9));
        assertThat(running.pace()).isCloseTo(1, within(1e-9));
    }

    @Test
    void finishedTasksOverTheEstimateRaiseTheRest() {
        RunningForecast over = shop.runningForecast(new RunningJob("now", finished(6, 2), open(0, 0, 0, 0), 0));
        RunningForecast under = shop.runningForecast(new RunningJob("now", finished(6, 0.8), open(0, 0, 0, 0), 0));
        assertThat(over.pace()).isGreaterThan(1.08);
        assertThat(under.pace()).isLessThan(0.98);
        assertThat(over.remaining().median()).isGreaterThan(under.remaining().median() * 1.1);
        assertThat(over.hoursSoFar()).isEqualTo(48);
        assertThat(over.atCompletion().mean()).isCloseTo(over.remaining().mean() + 48, within(1e-9));
        assertThat(over.shareDone()).isCloseTo(0.6, within(1e-9));
    }

    /** The same conditioning with the n x n covariance of the tasks: m_U + C_UO C_OO^-1 e_O. */
    @Test
    void conditioningIsThatOfTheFullCovariance() {
        CalibrationSettings settings = CalibrationSettings.standard()
                .withSimilarity(SimilaritySettings.none())
                .withTotals(new TotalSettings(2000, 1, 1e9, 0, 1));
        LearntTasks learnt = LearntTasks.from(shop(400, 4, 2, 3), settings);
        BaseModel base = BaseModel.fit(learnt, settings, SampleShop.DAY);
        List<PlannedTask> tasks = new ArrayList<>();
        List<Observation> done = List.of(task("a", "now", "k0", "w0", 3, 5), task("b", "now", "new kind", "w1", 9, 7));
        tasks.add(PlannedTask.of("u", "new kind", 5).by("w0"));
        done.forEach(o -> tasks.add(JobEffects.asPlanned(o)));
        double[][] c = covariance(base, tasks);
        double[] m = means(base, tasks);
        double[] e = {Math.log(5 / 3.0) - m[1], Math.log(7 / 9.0) - m[2]};
        double det = c[1][1] * c[2][2] - c[1][2] * c[2][1];
        double[][] inverse = {{c[2][2] / det, -c[1][2] / det}, {-c[2][1] / det, c[1][1] / det}};
        double mean = m[0];
        double variance = c[0][0];
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                mean += c[0][i + 1] * inverse[i][j] * e[j];
                variance -= c[0][i + 1] * inverse[i][j] * c[j + 1][0];
            }
        }
        JobEffects effects = new JobEffects(
                base,
                tasks.subList(0, 1),
                LearntTasks.from(done, settings),
                new org.tallywright.calibration.engine.model.CommonDraws(2000, 1));
        assertThat(effects.marginal(0).average()).isCloseTo(mean, within(1e-9));
        assertThat(effects.marginal(0).standardDeviation()).isCloseTo(Math.sqrt(variance), within(1e-9));
    }

    private static double[] means(BaseModel base, List<PlannedTask> tasks) {
        return tasks.stream()
                .mapToDouble(task -> 0.15
                        + base.effects(task).stream()
                                .mapToDouble(effect -> effect.value() * effect.mean(base.mode()))
                                .sum())
                .toArray();
    }

    private static double[][] covariance(BaseModel base, List<PlannedTask> tasks) {
        int n = tasks.size();
        double[][] c = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                c[i][j] = base.mode().variance(3) + (i == j ? base.mode().variance(0) : 0);
                for (Effect one : base.effects(tasks.get(i))) {
                    for (Effect other : base.effects(tasks.get(j))) {
                        c[i][j] += one.value() * other.value() * one.covariance(other, base.mode());
                    }
                }
            }
        }
        return c;
    }

    @Test
    void aTaskNeverEndsBelowWhatIsLoggedOnItAndTheFloorLeavesNoSpike() {
        RunningForecast running = shop.runningForecast(new RunningJob("now", finished(3, 1.2), open(6, 0, 1), 0));
        Distribution over = running.openTasks().get(0);
        assertThat(over.quantiles()[0]).isGreaterThanOrEqualTo(6);
        assertThat(over.quantile(0.1)).as("a clamp would leave a spike at 6").isGreaterThan(6.05);
        assertThat(over.median()).isGreaterThan(6.4);
        assertThat(running.remaining().quantiles()[0]).isPositive();
        assertThat(running.hoursSoFar()).isCloseTo(3 * 4.8 + 7, within(1e-9));
    }

    @Test
    void truncationIsThatOfTheUntruncatedForecast() {
        for (double share : new double[] {0, 0.25}) {
            Calibration calibration = Calibrator.fit(
                    shop(120, 4, 2, 3),
                    CalibrationSettings.standard()
                            .withTotals(TotalSettings.standard().withBlendUntil(share)));
            Distribution free = calibration
                    .runningForecast(new RunningJob("now", List.of(), open(0), 0))
                    .openTasks()
                    .get(0);
            Distribution floored = calibration
                    .runningForecast(new RunningJob("now", List.of(), open(5), 0))
                    .openTasks()
                    .get(0);
            double above = 1 - free.probabilityBelow(5);
            for (double p : new double[] {0.2, 0.5, 0.8}) {
                double x = floored.quantile(p);
                assertThat((free.probabilityBelow(x) - (1 - above)) / above).isCloseTo(p, within(0.03));
            }
        }
    }

    @Test
    void farOverTheEstimateTheForecastStaysJustAboveTheLog() {
        RunningForecast running = shop.runningForecast(new RunningJob("now", List.of(), open(400), 0));
        assertThat(running.openTasks().get(0).quantiles()[0]).isGreaterThanOrEqualTo(400);
        assertThat(running.openTasks().get(0).high80()).isBetween(400.0, 800.0);
    }

    @Test
    void theFirstFinishedTaskMakesNoJump() {
        List<RunningTask> twenty = open(new double[20]);
        double bid = shop.runningForecast(new RunningJob("now", List.of(), twenty, 0))
                .atCompletion()
                .median();
        Observation first = task("open 0", "now", "k0", "w0", 4, 5);
        double after = shop.runningForecast(new RunningJob("now", List.of(first), twenty.subList(1, 20), 0))
                .atCompletion()
                .median();
        assertThat(after / bid).isCloseTo(1, within(0.04));
    }

    @Test
    void aJobWithNothingOpenEndsAtItsHours() {
        RunningForecast done = shop.runningForecast(new RunningJob("now", finished(4, 1), List.of(), 2.5));
        assertThat(done.atCompletion()).isEqualTo(Distribution.exactly(18.5));
        assertThat(done.shareDone()).isEqualTo(1);
    }

    @Test
    void aWildFinishedTaskDoesNotMoveTheJobWithoutLimit() {
        RunningForecast mild = shop.runningForecast(new RunningJob("now", finished(1, 4), open(0, 0, 0), 0));
        RunningForecast wild = shop.runningForecast(new RunningJob("now", finished(1, 18), open(0, 0, 0), 0));
        assertThat(wild.remaining().median() / mild.remaining().median()).isBetween(0.95, 1.05);
    }
}
