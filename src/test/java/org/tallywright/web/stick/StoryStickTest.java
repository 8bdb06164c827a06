package org.tallywright.web.stick;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.tallywright.web.stick.SampleSticks.forecast;
import static org.tallywright.web.stick.SampleSticks.stage;
import static org.tallywright.web.stick.StickStage.State.AHEAD;
import static org.tallywright.web.stick.StickStage.State.DONE;
import static org.tallywright.web.stick.StickStage.State.UNDER_WAY;

import java.io.StringReader;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Hours;
import org.xml.sax.InputSource;

class StoryStickTest {
    @Test
    void setsMarksInProportionToTheEstimate() {
        var plan = StickPlan.byHours(
                List.of(stage("Mill", 120, 60, DONE), stage("Build", 360, 0, AHEAD)), List.of(), null);
        assertThat(plan.axisMinutes()).isEqualTo(480);
        assertThat(plan.segments().get(0)).isEqualTo(new StickPlan.Segment(0, .25, .125, .25));
        assertThat(plan.segments().get(1)).isEqualTo(new StickPlan.Segment(.25, 1, .25, 1));
    }

    @Test
    void drawsAnOverrunBeyondItsMarkInTheSameScale() {
        var plan = StickPlan.byHours(
                List.of(stage("Mill", 120, 240, DONE), stage("Build", 360, 0, AHEAD)), List.of(), null);
        var mill = plan.segments().get(0);
        assertThat(mill.filled()).isEqualTo(mill.end());
        assertThat(mill.overEnd() - mill.end()).isEqualTo(.25, within(1e-9));
        assertThat(plan.broken()).isFalse();
    }

    @Test
    void saysTheHoursThatStandOnNoTask() {
        var stages = List.of(stage("Mill", 240, 150, UNDER_WAY));
        var stick = StoryStick.of(stages, List.of(), null).besides(Hours.ofMinutes(450));
        assertThat(stick.sum()).isEqualTo("2 h 30 logged of 4 h estimated, and 7 h 30 on no task");
        assertThat(stick.words()).startsWith(stick.sum());
        assertThat(StoryStick.of(stages, List.of(), null).besides(Hours.ZERO).sum())
                .doesNotContain("no task");
        assertThat(StoryStick.progress(stages, List.of())
                        .besides(Hours.ofMinutes(450))
                        .sum())
                .doesNotContain("7 h");
    }

    @Test
    void makesRoomForTheForecastAndALateOverrun() {
        var stages = List.of(stage("Mill", 240, 0, DONE), stage("Build", 240, 300, UNDER_WAY));
        assertThat(StickPlan.byHours(stages, List.of(), null).axisMinutes()).isEqualTo(540);
        assertThat(StickPlan.byHours(stages, List.of(), forecast(500, 560, 600)).axisMinutes())
                .isEqualTo(600);
    }

    @Test
    void cutsAHugeOverrunOffAndSaysSo() {
        var plan = StickPlan.byHours(
                List.of(stage("Mill", 60, 60_000, DONE), stage("Build", 540, 0, AHEAD)),
                List.of(),
                forecast(600, 700, 800));
        assertThat(plan.axisMinutes()).isEqualTo(960);
        assertThat(plan.broken()).isTrue();
        assertThat(plan.cutsOff(0)).isTrue();
        assertThat(plan.cutsOff(1)).isFalse();
        assertThat(plan.segments().get(0).overEnd()).isEqualTo(1);
        assertThat(StickWords.of(plan)).contains("Mill: done, 1000 h of 1 h, 999 h over");
    }

    @Test
    void givesEqualStagesWhereNothingIsEstimated() {
        var plan =
                StickPlan.byHours(List.of(stage("Measure", 0, 90, DONE), stage("Bid", 0, 0, AHEAD)), List.of(), null);
        assertThat(plan.toScale()).isFalse();
        assertThat(plan.segments().get(0)).isEqualTo(new StickPlan.Segment(0, .5, .5, .5));
        assertThat(StickWords.of(plan))
                .containsExactly("1 h 30 logged, nothing estimated yet", "Measure: done, 1 h 30 logged", "Bid: ahead");
    }

    @Test
    void tellsAllInWords() {
        var stick = StoryStick.of(SampleSticks.windowSeat(), SampleSticks.cures(), forecast(3480, 3960, 4620));
        assertThat(stick.words())
                .containsExactly(
                        "31 h 15 logged of 58 h estimated",
                        "Measure: done, 1 h 45 of 2 h",
                        "Bid: done, 2 h 30 of 3 h",
                        "Buy: done, 2 h 15 of 2 h, 15 min over",
                        "Mill: done, 11 h of 8 h, 3 h over",
                        "Build: under way, 13 h 45 of 18 h",
                        "Fit: ahead, 7 h",
                        "Finish: ahead, 8 h",
                        "Install: ahead, 9 h",
                        "Close: ahead, 1 h",
                        "Waiting after Build: edge banding cures until 18:40",
                        "Waiting after Finish: oil, full cure until Thu 3 Dec",
                        "Likely 66 h at the end; four times in five between 58 h and 77 h, from 9 jobs");
    }

    @Test
    void tellsNothingOfHoursToThoseWhoMayNotSeeThem() {
        var few = StoryStick.progress(List.of(stage("Mill", 120, 997, DONE), stage("Build", 60, 0, AHEAD)), List.of());
        var many = StoryStick.progress(List.of(stage("Mill", 9, 3, DONE), stage("Build", 5000, 0, AHEAD)), List.of());
        assertThat(few.wide()).isEqualTo(many.wide());
        assertThat(few.narrow()).isEqualTo(many.narrow());
        assertThat(few.words()).containsExactly("1 of 2 stages done", "Mill: done", "Build: ahead");
    }

    @Test
    void escapesWhatPeopleTyped() {
        var stick = StoryStick.of(
                List.of(stage("<script>alert(\"x\")</script>\u0000", 60, 0, AHEAD)),
                List.of(new StickWait(0, "<b>glue</b> & 'oil'")),
                null);
        for (String svg : List.of(stick.wide(), stick.narrow())) {
            assertThat(svg).doesNotContain("<script", "<b>", "\u0000").contains("&lt;b&gt;glue");
        }
    }

    @Test
    void drawsWellFormedPicturesForEverySort() throws Exception {
        for (var named : SampleSticks.all().entrySet()) {
            for (String svg : List.of(named.getValue().wide(), named.getValue().narrow())) {
                var parsed = DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(new InputSource(new StringReader(svg)));
                assertThat(parsed.getElementsByTagName("title").getLength()).isEqualTo(1);
                assertThat(svg).as(named.getKey()).doesNotContain("NaN", "Infinity", "width=\"-", "null");
            }
        }
    }

    @Test
    void usesAnotherSetOfIdsForEachNamedStick() {
        var stick = StoryStick.of(SampleSticks.windowSeat(), List.of(), null);
        assertThat(stick.named("26-014").wide()).contains("id=\"stick-26-014-l-t\"");
        assertThat(stick.named("26-014").narrow()).contains("id=\"stick-26-014-u-t\"");
    }

    @Test
    void keepsEveryNameOfManyShortStages() {
        var stick = SampleSticks.all().get("twelve stages");
        for (int i = 1; i <= 11; i++) {
            assertThat(stick.narrow()).contains(">Short stage " + i + "</tspan>");
        }
        assertThat(stick.wide()).contains("…10</text>").contains("…11</text>");
    }

    @Test
    void spreadsNamesWithoutOverlapInOrderAndInsideTheRoom() {
        double[] placed = Spread.place(new double[] {0, 1, 2, 90}, new double[] {20, 20, 20, 20}, 100);
        assertThat(placed).containsExactly(0, 20, 40, 80);
        assertThat(Spread.place(new double[] {0, 50}, new double[] {80, 80}, 100))
                .containsExactly(0, 80);
        assertThat(Spread.place(new double[] {}, new double[] {}, 100)).isEmpty();
    }

    @Test
    void hangsWhatWouldMeetInTheNextLane() {
        var lanes = new Lanes();
        assertThat(lanes.lane(0, 10)).isZero();
        assertThat(lanes.lane(5, 15)).isEqualTo(1);
        assertThat(lanes.lane(10, 20)).isZero();
        assertThat(lanes.count()).isEqualTo(2);
    }

    @Test
    void setsTicksAtRoundHours() {
        assertThat(plan(58 * 60).tickHours(80)).isEqualTo(1);
        assertThat(plan(100 * 60).tickHours(80)).isEqualTo(2);
        assertThat(plan(900 * 60).tickHours(80)).isEqualTo(20);
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> stage("Mill", -1, 0, AHEAD)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StickForecast(Hours.ofMinutes(9), Hours.ofMinutes(8), Hours.ofMinutes(10), 1))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static StickPlan plan(int minutes) {
        return StickPlan.byHours(List.of(stage("Build", minutes, 0, AHEAD)), List.of(), null);
    }
}
