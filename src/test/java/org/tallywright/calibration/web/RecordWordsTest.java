package org.tallywright.calibration.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.Coverage;
import org.tallywright.calibration.MeanRatio;
import org.tallywright.calibration.RangeRecord;
import org.tallywright.calibration.TrackRecord;
import org.tallywright.calibration.Trend;
import org.tallywright.shared.MoneyFormat;

/** The sentences a carpenter reads, with no job, one, three and fourteen behind them. */
class RecordWordsTest {
    private static final TrackRecord.Bids NO_BIDS = new TrackRecord.Bids(List.of(), 0, null, null, 1);

    private static RangeRecord ranges(int inside, int of, @Nullable MeanRatio bias) {
        return new RangeRecord(Coverage.of(inside, of), Coverage.of(inside, of), bias, 0.7, 1.4);
    }

    private static RecordWords of(
            TrackRecord.Bids bids,
            List<TrackRecord.Stage> stages,
            @Nullable RangeRecord looking,
            @Nullable Trend small) {
        TrackRecord.Summary sum = looking == null ? null : new TrackRecord.Summary(looking, null, 0);
        return RecordWords.of(
                new TrackRecord.Page(
                        bids, stages, List.of(), sum, null, small, List.of(), List.of(), List.of(), List.of()),
                MoneyFormat.DEFAULT);
    }

    private static String bids(int inside, int of, int without) {
        MeanRatio bias = of < 3 ? null : new MeanRatio(1.1, 1.02, 1.2, of);
        RangeRecord ranges = of == 0 ? null : ranges(inside, of, bias);
        return String.join(
                " ",
                of(new TrackRecord.Bids(List.of(), without, ranges, null, 1), List.of(), null, null)
                        .bids());
    }

    @Test
    void saysNothingOfNoJobsButThatThereAreNone() {
        RecordWords words = of(NO_BIDS, List.of(), null, null);
        assertThat(words.bids()).isEmpty();
        assertThat(words.record()).isEmpty();
        assertThat(words.habits()).isEmpty();
        assertThat(words.running()).singleElement().asString().startsWith("No finished job has a forecast kept");
        assertThat(bids(0, 0, 1))
                .isEqualTo(
                        "No finished job has a forecast kept from its bid yet. 1 finished job was brought in from a file,"
                                + " bid before forecasts were kept, or closed without an accepted bid; it is judged only looking"
                                + " back.");
    }

    @Test
    void saysOfOneJobThatItIsTooEarlyToTell() {
        assertThat(bids(1, 1, 0))
                .startsWith("Of 1 finished job with a forecast kept from its bid, 1 ended inside the range we gave.")
                .contains(
                        "from one job the true rate may be anywhere between 35 % and 99 %, so it is too early to tell.")
                .contains("1 of 1 stayed under its P80")
                .contains("needs three finished jobs")
                .contains("The range went from 70 % to 140 % of the likely hours.")
                .doesNotContain("middle job", "besides");
        assertThat(bids(0, 1, 2)).contains("0 ended inside", "2 finished jobs besides were brought in");
    }

    @Test
    void saysOfThreeJobsWhichWayTheyLean() {
        assertThat(bids(2, 3, 0))
                .contains("Of 3 finished jobs with a forecast kept from their bid, 2 ended inside")
                .contains("so it is too early to tell")
                .contains(
                        "Jobs took 10 % more than forecast (four times in five between 2 % more and 20 % more, 3 finished"
                                + " jobs). The forecasts were too low.")
                .contains("In the middle job");
        assertThat(bids(0, 3, 0)).contains("from so few jobs", "the ranges may be too narrow.");
    }

    @Test
    void saysOfFourteenJobsWhetherElevenFit() {
        assertThat(bids(11, 14, 0))
                .contains("Of 14 finished jobs", "11 ended inside the range we gave.", "which fits.");
        assertThat(bids(6, 14, 0)).contains("the ranges were too narrow.").doesNotContain("which fits");
        assertThat(bids(14, 14, 0)).contains("they could have been narrower.");
    }

    @Test
    void lookingBackClaimsNoRangeThatWasGiven() {
        assertThat(of(NO_BIDS, List.of(), ranges(11, 14, null), null).record().get(0))
                .startsWith("Of 14 finished jobs, 11 ended inside the range that would have been given.");
    }

    @Test
    void saysHowRunningForecastsAreCorrectedNow() {
        RecordWords words = of(
                NO_BIDS,
                List.of(
                        new TrackRecord.Stage(25, ranges(3, 5, null), 1.12, -0.4),
                        new TrackRecord.Stage(50, null, 1, 0),
                        new TrackRecord.Stage(75, ranges(1, 1, null), 1, 0)),
                null,
                null);
        assertThat(words.running()).hasSize(2);
        assertThat(words.running().get(0))
                .startsWith(
                        "With about a quarter done: of 5 finished jobs with a forecast kept from then, 3 ended inside")
                .endsWith(
                        "New ranges of the hours still to come are therefore made about 1.1 times as wide and moved to fewer hours.");
        assertThat(words.running().get(1))
                .startsWith("With about three quarters done: of 1 finished job")
                .doesNotContain("New ranges");
    }

    /** A factor of 1.2 on the log scale: 0.7 to 1.4 becomes 0.65 to 1.50. */
    @Test
    void saysHowMuchWiderOnTheScaleThatIsShown() {
        TrackRecord.Bids widened = new TrackRecord.Bids(List.of(), 3, null, null, 1.2);
        assertThat(of(widened, List.of(), ranges(1, 3, null), null).record())
                .contains(
                        "From what the bids said and this together, new ranges are made wider: one like that of the middle job"
                                + " becomes about 1.2 times as wide.");
        TrackRecord.Bids hardly = new TrackRecord.Bids(List.of(), 3, null, null, 1.02);
        assertThat(of(hardly, List.of(), ranges(1, 3, null), null).record())
                .noneMatch(sentence -> sentence.contains("times as wide"));
    }

    @Test
    void speaksOfSmallTasksOnlyAsFarAsTheRangeGoes() {
        assertThat(small(1.3, 1.1, 1.5))
                .contains("the 5 smaller of 9 tasks took 30 % more than the larger ones", "where set-up is forgotten");
        assertThat(small(1.1, 0.9, 1.3)).contains("No clear difference.").doesNotContain("set-up");
        assertThat(small(0.8, 0.7, 0.9))
                .contains("Large tasks take longer against their rates.")
                .doesNotContain("set-up");
    }

    private static String small(double ratio, double low, double high) {
        return of(NO_BIDS, List.of(), null, new Trend(ratio, low, high, 9, 5))
                .habits()
                .get(0);
    }
}
