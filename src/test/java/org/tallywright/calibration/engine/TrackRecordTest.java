package org.tallywright.calibration.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the engine learns from its own stored forecasts and from hours that no line named. */
class TrackRecordTest {

    private final List<PlannedTask> lines = List.of(PlannedTask.of("a", "k0", 10), PlannedTask.of("b", "k1", 20));
    private final Calibration shop = SampleShop.fit(SampleShop.shop(80, 3, 2, 1));

    @Test
    void withoutStoredForecastsNothingIsWidened() {
        assertThat(SelfCalibration.none().factor(PastForecast.Stage.AT_BID)).isEqualTo(1);
        assertThat(SelfCalibration.from(List.of()).factor(PastForecast.Stage.HALF_DONE))
                .isEqualTo(1);
    }

    @Test
    void forecastsThatWereTooSureAreWidenedByTheFormula() {
        PastForecast miss = new PastForecast(PastForecast.Stage.AT_BID, 0.9772498680518208);
        SelfCalibration record = SelfCalibration.from(Collections.nCopies(15, miss));
        double expected = Math.sqrt((10 + 15 * 4.0) / 25);
        assertThat(record.factor(PastForecast.Stage.AT_BID)).isCloseTo(expected, within(1e-6));
        assertThat(record.factor(PastForecast.Stage.QUARTER_DONE)).isEqualTo(1);
        Distribution before = shop.jobForecast(lines).hours();
        JobForecast after = shop.with(record).jobForecast(lines);
        assertThat(after.hours().median()).isCloseTo(before.median(), within(1e-3));
        assertThat(Math.log(after.hours().p90() / before.median()))
                .isCloseTo(expected * Math.log(before.p90() / before.median()), within(0.01));
        assertThat(after.unwidened()).isEqualTo(before);
    }

    @Test
    void forecastsThatWereTooWideAreLeftAlone() {
        SelfCalibration record =
                SelfCalibration.from(Collections.nCopies(30, new PastForecast(PastForecast.Stage.AT_BID, 0.5)));
        assertThat(record.factor(PastForecast.Stage.AT_BID)).isEqualTo(1);
    }

    @Test
    void aRunningForecastThatWasAlwaysTooHighIsMovedOnceThatHasPaid() {
        PastForecast low = new PastForecast(PastForecast.Stage.HALF_DONE, 0.1586552539);
        double evidence = 0;
        for (int m = 0; m < 12; m++) {
            double before = -m / (10.0 + m);
            evidence += -before - before * before / 2;
        }
        double expected = -12 / 22.0 / (1 + Math.exp(2 - evidence));
        SelfCalibration record = SelfCalibration.from(Collections.nCopies(12, low));
        assertThat(record.shift(PastForecast.Stage.HALF_DONE)).isCloseTo(expected, within(1e-6));
        assertThat(record.shift(PastForecast.Stage.QUARTER_DONE)).isZero();
        assertThat(record.factor(PastForecast.Stage.HALF_DONE)).isEqualTo(1);
        RunningJob job = new RunningJob(
                "now",
                List.of(SampleShop.task("done", "now", "k0", "w0", 10, 12)),
                List.of(new RunningTask(PlannedTask.of("open", "k1", 10), 0)),
                0);
        Distribution before = shop.runningForecast(job).remaining();
        RunningForecast after = shop.with(record).runningForecast(job);
        double sd = Math.log(before.high80() / before.low80()) / 2.563103;
        assertThat(Math.log(after.remaining().median() / before.median())).isCloseTo(expected * sd, within(1e-6));
        assertThat(after.unwidenedRemaining()).isEqualTo(before);
    }

    /** A hundred tasks of an hour: each finished one is a hundredth. */
    @Test
    void theCorrectionOfARunningJobGrowsWithTheShareDoneAndNeverJumps() {
        List<PastForecast> past = new ArrayList<>();
        for (int n = 0; n < 30; n++) {
            past.add(new PastForecast(PastForecast.Stage.QUARTER_DONE, n % 2 == 0 ? 0.001 : 0.999));
            past.add(new PastForecast(PastForecast.Stage.HALF_DONE, n % 3 == 0 ? 0.2 : 0.02));
            past.add(new PastForecast(PastForecast.Stage.THREE_QUARTERS_DONE, 0.98));
        }
        Calibration corrected = shop.with(SelfCalibration.from(past));
        SelfCalibration record = corrected.record();
        double before = 1;
        for (int done = 0; done < 100; done++) {
            RunningForecast said = corrected.runningForecast(hundred(done));
            double width = width(said.remaining()) / width(said.unwidenedRemaining());
            assertThat(width).as("%d %% done", done).isCloseTo(before, within(0.08));
            before = width;
            if (done % 25 == 0) {
                PastForecast.Stage stage = PastForecast.Stage.of(done / 100.0);
                assertThat(width).isCloseTo(record.factor(stage), within(1e-3));
            }
        }
        assertThat(before).isCloseTo(record.factor(PastForecast.Stage.THREE_QUARTERS_DONE), within(1e-3));
        assertThat(record.factor(PastForecast.Stage.QUARTER_DONE)).isGreaterThan(2);
    }

    private static double width(Distribution hours) {
        return Math.log(hours.high80() / hours.low80());
    }

    private static RunningJob hundred(int done) {
        List<Observation> finished = new ArrayList<>();
        List<RunningTask> open = new ArrayList<>();
        for (int n = 0; n < 100; n++) {
            if (n < done) {
                finished.add(SampleShop.task("t" + n, "now", "k0", "w0", 1, 1.1));
            } else {
                open.add(new RunningTask(PlannedTask.of("t" + n, "k1", 1), 0));
            }
        }
        return new RunningJob("now", finished, open, 0);
    }

    @Test
    void aShiftThatCameAndWentIsNotTrusted() {
        List<PastForecast> swings = new ArrayList<>();
        for (int n = 0; n < 20; n++) {
            swings.add(new PastForecast(PastForecast.Stage.HALF_DONE, n % 2 == 0 ? 0.05 : 0.95));
        }
        assertThat(SelfCalibration.from(swings).shift(PastForecast.Stage.HALF_DONE))
                .isCloseTo(0, within(0.02));
        PastForecast bid = new PastForecast(PastForecast.Stage.AT_BID, 0.1);
        assertThat(SelfCalibration.from(Collections.nCopies(30, bid)).shift(PastForecast.Stage.AT_BID))
                .as("a bid is widened, never moved")
                .isZero();
    }

    @Test
    void storesWhereTheActualFell() {
        Distribution forecast = shop.jobForecast(lines).unwidened();
        assertThat(PastForecast.atBid(forecast, forecast.p80()).probability()).isCloseTo(0.8, within(0.003));
        assertThat(PastForecast.running(0.5, forecast, 0).probability()).isZero();
        assertThat(PastForecast.Stage.of(0.3)).isEqualTo(PastForecast.Stage.QUARTER_DONE);
        assertThat(PastForecast.Stage.of(0.9)).isEqualTo(PastForecast.Stage.THREE_QUARTERS_DONE);
    }

    @Test
    void withoutFinishedJobsTheShareOnNoLineIsTheStartingOne() {
        HoursOnNoLine start = HoursOnNoLine.learn(List.of());
        assertThat(start.share().mean()).isCloseTo(0.08, within(0.001));
        assertThat(start.startingShare()).isEqualTo(1);
    }

    @Test
    void theShareOnNoLineIsShrunkAndSplitByClass() {
        List<JobHours> jobs = Collections.nCopies(6, new JobHours("j", 100, Map.of("rework", 12.0, "travel", 8.0)));
        HoursOnNoLine learnt = HoursOnNoLine.learn(jobs);
        assertThat(learnt.share().mean()).isCloseTo((6 * 0.20 + 4 * 0.08) / 10, within(0.001));
        assertThat(learnt.shareByClass().get("rework")).isCloseTo(0.072, within(1e-9));
        assertThat(learnt.startingShare()).isCloseTo(0.4, within(1e-9));
        Distribution lines = shop.jobForecast(this.lines).hours();
        JobForecast total = shop.with(learnt).jobForecast(this.lines);
        assertThat(total.lineHours()).isEqualTo(lines);
        assertThat(total.hours().mean() / lines.mean()).isCloseTo(1.152, within(0.01));
    }

    @Test
    void aJobWithoutLineHoursAndAWildShareDoNotMoveIt() {
        HoursOnNoLine learnt = HoursOnNoLine.learn(List.of(
                new JobHours("none", 0, Map.of("office", 5.0)), new JobHours("wild", 1, Map.of("travel", 90.0))));
        assertThat(learnt.jobs()).isEqualTo(1);
        assertThat(learnt.share().mean()).isLessThan(0.5);
    }
}
