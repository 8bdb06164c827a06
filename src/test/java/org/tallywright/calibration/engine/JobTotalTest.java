package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tallywright.calibration.engine.SampleShop.fit;
import static org.tallywright.calibration.engine.SampleShop.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.engine.model.CheckFile;
import org.tallywright.calibration.engine.model.LogSdPrior;

class JobTotalTest {

    private final Calibration small = fit(shop(60, 4, 2, 3));
    private final Calibration large = fit(shop(600, 8, 3, 3));

    private static List<PlannedTask> lines(int count) {
        List<PlannedTask> lines = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            lines.add(PlannedTask.of("line " + i, "k" + i % 5, 2 + i % 6).by("w" + i % 2));
        }
        return lines;
    }

    @Test
    void aJobOfOneTaskIsThatTask() {
        for (Calibration calibration : List.of(small, large)) {
            PlannedTask only = lines(1).get(0);
            Distribution task = calibration.taskForecast(only).hours();
            Distribution job = calibration.jobForecast(List.of(only)).hours();
            assertThat(job.quantiles()).containsExactly(task.quantiles(), within(1e-9));
            assertThat(job.mean()).isCloseTo(task.mean(), within(1e-9));
        }
    }

    @Test
    void meansAddUpAndMediansDoNot() {
        JobForecast job = small.jobForecast(lines(12));
        double means = job.tasks().stream().mapToDouble(t -> t.hours().mean()).sum();
        double medians =
                job.tasks().stream().mapToDouble(t -> t.hours().median()).sum();
        assertThat(job.hours().mean()).isCloseTo(means, within(1e-6));
        assertThat(job.hours().median()).isGreaterThan(medians * 1.02);
    }

    @Test
    void sharedEffectsMakeATotalLessCertainThanIndependentTasks() {
        JobForecast job = small.jobForecast(lines(30));
        double variance =
                job.tasks().stream().mapToDouble(task -> variance(task.hours())).sum();
        assertThat(variance(job.hours())).isGreaterThan(1.5 * variance);
    }

    @Test
    void editingOneLineMovesTheTotalSmoothly() {
        List<PlannedTask> lines = lines(12);
        double before = small.jobForecast(lines).hours().p80();
        List<PlannedTask> edited = new ArrayList<>(lines);
        edited.set(3, PlannedTask.of("line 3", "k3", 5.05).by("w1"));
        double after = small.jobForecast(edited).hours().p80();
        assertThat(after - before).isBetween(0.0, 0.3);
        List<PlannedTask> shorter = new ArrayList<>(lines);
        shorter.remove(0);
        assertThat(before - small.jobForecast(shorter).hours().p80()).isBetween(1.0, 6.0);
    }

    @Test
    void twoLinesOfTheSameNameStillHaveTheirOwnLuck() {
        PlannedTask line = PlannedTask.of("line", "k0", 8);
        Distribution twice = large.jobForecast(List.of(line, line)).hours();
        double alone = variance(large.taskForecast(line).hours());
        assertThat(variance(twice)).isLessThan(3.2 * alone);
    }

    @Test
    void labourCostFollowsTheSameDraws() {
        List<PlannedTask> lines = lines(6);
        double[] rates = {50, 50, 50, 50, 50, 50};
        double[] cost = large.lineDraws(lines, rates).values();
        assertThat(Distribution.ofDraws(cost).p80())
                .isCloseTo(50 * large.jobForecast(lines).hours().p80(), within(1e-6));
    }

    @Test
    void theSameOnOneOrTwoThreads() throws Exception {
        Callable<List<Distribution>> work = () -> {
            Calibration calibration = fit(shop(400, 6, 3, 12));
            return List.of(
                    calibration.jobForecast(lines(25)).hours(),
                    calibration.taskForecast(lines(1).get(0)).hours());
        };
        List<Distribution> alone = work.call();
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            for (Future<List<Distribution>> both : two.invokeAll(List.of(work, work, work, work))) {
                assertThat(both.get()).isEqualTo(alone);
            }
        } finally {
            two.shutdown();
        }
    }

    /** A shop without shared effects: independent lognormal tasks, whose sums are known from outside. */
    @Test
    void sumsOfIndependentTasksAreTheKnownOnes() {
        for (CSVRecord row : CheckFile.rows("lognormal_sums.csv")) {
            boolean three = row.get("sum").equals("three");
            double estimate = three ? 1 : 4;
            List<PlannedTask> tasks = new ArrayList<>();
            for (int i = 0; i < (three ? 3 : 10); i++) {
                tasks.add(PlannedTask.of("t" + i, "kind " + i, estimate));
            }
            Distribution total =
                    independent(three ? 0.5 : 0.35).jobForecast(tasks).hours();
            double value = switch (row.get("check")) {
                case "mean" -> total.mean();
                case "variance" -> variance(total);
                default -> total.quantile(Double.parseDouble(row.get("check").substring(9)));
            };
            double tolerance = CheckFile.number(row, "tolerance");
            double expected = CheckFile.number(row, "expected");
            // 200 quantiles cut the outermost quarter per cent of each task: the spread comes out a few per cent low
            double cut = row.get("check").equals("variance") ? 0.08 * expected : 0.003 * expected;
            assertThat(value).as(row.toString()).isCloseTo(expected, within(tolerance + cut));
        }
    }

    @Test
    void oneTaskHasTheLognormalsFacts() {
        for (CSVRecord row : CheckFile.rows("lognormal.csv")) {
            double sigma = CheckFile.number(row, "sigma");
            double scale = Math.exp(CheckFile.number(row, "mu"));
            Distribution hours = independent(sigma)
                    .taskForecast(PlannedTask.of("t", "kind", scale))
                    .hours();
            double value = switch (row.get("check")) {
                case "mean" -> hours.mean();
                case "median" -> hours.median();
                case "variance" -> variance(hours);
                default -> hours.quantile(Double.parseDouble(row.get("check").substring(9)));
            };
            double expected = CheckFile.number(row, "expected");
            // quantiles are interpolated between 200; mean and variance lose what lies outside them
            double relative = row.get("check").equals("variance") ? 0.03 + 0.3 * sigma : 0.0005 + 0.012 * sigma * sigma;
            assertThat(value / expected).as(row.toString()).isCloseTo(1, within(relative));
        }
    }

    private static Calibration independent(double sigma) {
        LogSdPrior none = new LogSdPrior(-5.99, 1e-3);
        Priors priors = new Priors(0, 1e-4, 1e-4, 1e-4, LogSdPrior.around(sigma, 1e-3), none, none, none);
        return Calibrator.fit(
                List.of(),
                CalibrationSettings.standard()
                        .withPriors(priors)
                        .withSimilarity(SimilaritySettings.none())
                        .withTotals(new TotalSettings(20_000, 5, 2.5, 0, 1)));
    }

    private static double variance(Distribution hours) {
        double sum = 0;
        for (double q : hours.quantiles()) {
            sum += (q - hours.mean()) * (q - hours.mean());
        }
        return sum / Distribution.SIZE;
    }
}
