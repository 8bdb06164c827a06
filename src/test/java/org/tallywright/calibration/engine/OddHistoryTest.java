package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tallywright.calibration.engine.SampleShop.fit;
import static org.tallywright.calibration.engine.SampleShop.shop;
import static org.tallywright.calibration.engine.SampleShop.task;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Histories a real shop can have and a textbook does not: each has a defined answer. */
class OddHistoryTest {

    private static final PlannedTask EIGHT_HOURS =
            PlannedTask.of("new", "k0", 8).by("w0");

    @Test
    void noHistoryGivesTheStartingRateWithTheStartingPessimism() {
        TaskForecast forecast = fit(List.of()).taskForecast(EIGHT_HOURS);
        assertThat(forecast.hours().median()).isCloseTo(8 * Math.exp(0.15), within(0.02));
        assertThat(forecast.hours().low80()).isBetween(3.5, 5.0);
        assertThat(forecast.hours().high80()).isBetween(17.0, 25.0);
        assertThat(forecast.observations()).isZero();
        assertThat(forecast.startingShare()).isEqualTo(1);
    }

    @Test
    void noHistoryPricesAWholeJob() {
        JobForecast forecast = fit(List.of()).jobForecast(List.of(EIGHT_HOURS, PlannedTask.of("other", "k1", 3)));
        assertThat(forecast.hours().median()).isBetween(11.0, 15.0);
        assertThat(forecast.startingShare()).isEqualTo(1);
        assertThat(fit(List.of()).jobForecast(List.of()).hours().mean()).isZero();
    }

    @Test
    void oneTaskMovesTheForecastALittleTowardsItself() {
        double before = fit(List.of()).taskForecast(EIGHT_HOURS).hours().median();
        Calibration one = fit(List.of(task("t", "j", "k0", "w0", 8, 16)));
        assertThat(one.taskForecast(EIGHT_HOURS).hours().median()).isBetween(before * 1.02, before * 1.5);
        assertThat(one.taskForecast(EIGHT_HOURS).startingShare()).isBetween(0.3, 0.95);
        assertThat(one.taskForecast(EIGHT_HOURS).observations()).isEqualTo(1);
    }

    @Test
    void oneWorkerAndOneKindAreLearntFromLikeAny() {
        List<Observation> lone = shop(60, 1, 1, 5);
        Distribution hours = fit(lone).taskForecast(EIGHT_HOURS).hours();
        assertThat(hours.median() / 8).isCloseTo(Math.exp(0.22), within(0.15));
        ModelFigures figures = fit(lone).figures();
        assertThat(figures.kindSd()).isBetween(0.01, 0.5);
        assertThat(figures.workerSd()).isBetween(0.01, 0.5);
    }

    @Test
    void identicalActualsNarrowTheRangeButNeverToAPoint() {
        List<Observation> same = IntStream.range(0, 40)
                .mapToObj(i -> task("t" + i, "j" + i / 5, "k0", "w0", 8, 10))
                .toList();
        Distribution hours = fit(same).taskForecast(EIGHT_HOURS).hours();
        assertThat(hours.median()).isCloseTo(10, within(0.05));
        assertThat(hours.high80()).isCloseTo(10, within(0.6));
        assertThat(hours.quantile(0.995)).isGreaterThan(10.3);
        assertThat(hours.quantile(0.005)).isLessThan(9.7);
    }

    @Test
    void actualsThatAlwaysEqualTheEstimateAreBelievedAndPointedOut() {
        List<Observation> copied = IntStream.range(0, 60)
                .mapToObj(i -> task("t" + i, "j" + i / 6, "k" + i % 3, "w0", 1 + i % 7, 1 + i % 7))
                .toList();
        Calibration calibration = fit(copied);
        assertThat(calibration.taskForecast(EIGHT_HOURS).hours().median()).isCloseTo(8, within(0.1));
        assertThat(calibration.figures().residualSd()).isGreaterThanOrEqualTo(0.05);
        assertThat(calibration.copiedHours())
                .singleElement()
                .matches(CopiedHours::suspicious)
                .isEqualTo(new CopiedHours("w0", 60, 60));
        assertThat(fit(shop(60, 3, 1, 5)).copiedHours()).noneMatch(CopiedHours::suspicious);
    }

    /** Bid at a rate of its own: the people saw 3 h where the starting rate says 2. */
    @Test
    void copiedIsWhatEqualsTheEstimateThatWasShown() {
        assertThat(fit(shown(3, 2)).copiedHours()).noneMatch(CopiedHours::suspicious);
        assertThat(fit(shown(3, 3)).copiedHours())
                .singleElement()
                .matches(CopiedHours::suspicious)
                .isEqualTo(new CopiedHours("w0", 8, 8));
    }

    private static List<Observation> shown(double shown, double took) {
        return IntStream.range(0, 8)
                .mapToObj(i -> new Observation(
                        "t" + i, "j" + i, "k0", WorkerShare.alone("w0"), 2, 1, took, SampleShop.DAY, Set.of(), shown))
                .toList();
    }

    @Test
    void aThousandfoldTypingErrorIsCutAndNoted() {
        List<Observation> tasks = new ArrayList<>(shop(40, 2, 1, 9));
        Distribution before = fit(tasks).taskForecast(EIGHT_HOURS).hours();
        tasks.add(task("typo", "j9", "k0", "w0", 8, 8000));
        Calibration calibration = fit(tasks);
        Distribution after = calibration.taskForecast(EIGHT_HOURS).hours();
        assertThat(after.median() / before.median()).isBetween(0.98, 1.25);
        assertThat(after.p80() / before.p80()).isLessThan(1.6);
        assertThat(calibration.notes())
                .singleElement()
                .matches(note -> note.observation().task().equals("typo")
                        && note.treatment() == Note.Treatment.RATIO_CUT
                        && note.treatment().kept());
    }

    @Test
    void hoursThatCannotBeLearntFromAreLeftOutAndNoted() {
        List<Observation> good = shop(30, 2, 2, 4);
        List<Observation> tasks = new ArrayList<>(good);
        tasks.add(task("nothing logged", "j1", "k0", "w0", 8, 0));
        tasks.add(task("below zero", "j1", "k0", "w0", 8, -2));
        tasks.add(task("not a number", "j1", "k0", "w0", 8, Double.NaN));
        tasks.add(task("no estimate", "j1", "k0", "w0", 0, 3));
        tasks.add(task("estimate below zero", "j1", "k0", "w0", -1, 3));
        Calibration calibration = fit(tasks);
        assertThat(calibration.notes())
                .extracting(Note::treatment)
                .containsExactly(
                        Note.Treatment.NO_HOURS,
                        Note.Treatment.NO_HOURS,
                        Note.Treatment.NO_HOURS,
                        Note.Treatment.NO_ESTIMATE,
                        Note.Treatment.NO_ESTIMATE);
        assertThat(calibration.taskForecast(EIGHT_HOURS)).isEqualTo(fit(good).taskForecast(EIGHT_HOURS));
    }

    @Test
    void aMinuteOfWorkCountsAsTheSmallestTask() {
        Calibration calibration = fit(List.of(task("blink", "j", "k0", "w0", 0.5, 0.01)));
        assertThat(calibration.notes()).extracting(Note::treatment).containsExactly(Note.Treatment.RAISED_TO_FEWEST);
        assertThat(calibration.figures().tasks()).isEqualTo(1);
    }

    @Test
    void twoHundredKindsAreFittedAndAnUnknownOneIsWider() {
        Calibration calibration = fit(shop(2000, 200, 5, 6));
        Distribution known = calibration.taskForecast(EIGHT_HOURS).hours();
        Distribution unknown = calibration
                .taskForecast(PlannedTask.of("new", "never", 8).by("nobody"))
                .hours();
        assertThat(known.median() / 8).isCloseTo(Math.exp(0.22), within(0.15));
        assertThat(unknown.high80() / unknown.low80()).isGreaterThan(1.0);
        assertThat(calibration.observationsOf("never")).isZero();
    }

    @Test
    void aRenamedKindForecastsTheSameAndMergedKindsPool() {
        List<Observation> tasks = shop(80, 3, 2, 8);
        List<Observation> renamed = tasks.stream()
                .map(task -> task.kind().equals("k0") ? task.ofKind("rip hardwood") : task)
                .toList();
        TaskForecast before = fit(tasks).taskForecast(EIGHT_HOURS);
        TaskForecast after = fit(renamed)
                .taskForecast(PlannedTask.of("new", "rip hardwood", 8).by("w0"));
        assertThat(after.observations()).isEqualTo(before.observations());
        assertThat(after.hours().quantiles()).containsExactly(before.hours().quantiles(), within(1e-9));
        List<Observation> merged = tasks.stream()
                .map(task -> task.kind().equals("k1") ? task.ofKind("k0") : task)
                .toList();
        Calibration pooled = fit(merged);
        assertThat(pooled.observationsOf("k0"))
                .isEqualTo(fit(tasks).observationsOf("k0") + fit(tasks).observationsOf("k1"));
        assertThat(pooled.observationsOf("k1")).isZero();
    }

    @Test
    void aReopenedJobIsForecastAsIfItHadNeverBeenLearnt() {
        CalibrationSettings plain = CalibrationSettings.standard()
                .withBase(BaseSettings.standard().withWeightExponent(0))
                .withTotals(TotalSettings.standard().withBlendUntil(0));
        List<Observation> tasks = shop(80, 3, 2, 8);
        List<Observation> own =
                tasks.stream().filter(task -> task.job().equals("j4")).toList();
        List<Observation> others =
                tasks.stream().filter(task -> !task.job().equals("j4")).toList();
        RunningJob reopened = new RunningJob("j4", own.subList(0, 5), List.of(new RunningTask(EIGHT_HOURS, 2)), 0);
        Distribution with =
                Calibrator.fit(tasks, plain).runningForecast(reopened).atCompletion();
        Distribution without =
                Calibrator.fit(others, plain).runningForecast(reopened).atCompletion();
        assertThat(with.median()).isCloseTo(without.median(), within(0.01));
        assertThat(with.high80()).isCloseTo(without.high80(), within(0.05));
    }

    @Test
    void anAcceptedRateRebasesThePastSoThatNothingIsCorrectedTwice() {
        List<Observation> tasks = shop(300, 1, 1, 2);
        double median = fit(tasks).taskForecast(EIGHT_HOURS).hours().median();
        double factor = median / 8;
        List<Observation> rebased =
                tasks.stream().map(task -> task.rebased(factor)).toList();
        PlannedTask again = PlannedTask.of("new", "k0", 8 * factor).by("w0");
        assertThat(fit(rebased).taskForecast(again).hours().median() / median).isCloseTo(1, within(0.02));
    }

    @Test
    void aLineOfNoHoursTakesNone() {
        PlannedTask nothing = PlannedTask.of("none", "k0", 0);
        Calibration calibration = fit(shop(30, 2, 1, 1));
        assertThat(calibration.taskForecast(nothing).hours()).isEqualTo(Distribution.exactly(0));
        Distribution with =
                calibration.jobForecast(List.of(EIGHT_HOURS, nothing)).hours();
        assertThat(with).isEqualTo(calibration.jobForecast(List.of(EIGHT_HOURS)).hours());
        assertThatThrownBy(() -> PlannedTask.of("bad", "k0", -1)).isInstanceOf(IllegalArgumentException.class);
    }
}
