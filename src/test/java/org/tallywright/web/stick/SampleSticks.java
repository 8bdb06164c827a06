package org.tallywright.web.stick;

import static org.tallywright.web.stick.StickStage.State.AHEAD;
import static org.tallywright.web.stick.StickStage.State.DONE;
import static org.tallywright.web.stick.StickStage.State.SKIPPED;
import static org.tallywright.web.stick.StickStage.State.UNDER_WAY;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tallywright.shared.Hours;

/** Sticks of every sort, shared by the tests and the style page. */
public final class SampleSticks {
    private SampleSticks() {}

    static StickStage stage(String name, int estimated, int logged, StickStage.State state) {
        return new StickStage(name, Hours.ofMinutes(estimated), Hours.ofMinutes(logged), state);
    }

    static StickForecast forecast(int low, int likely, int high) {
        return new StickForecast(Hours.ofMinutes(low), Hours.ofMinutes(likely), Hours.ofMinutes(high), 9);
    }

    /** 58 h estimated, 31 h 15 logged, Mill 3 h over. */
    static List<StickStage> windowSeat() {
        return List.of(
                stage("Measure", 120, 105, DONE),
                stage("Bid", 180, 150, DONE),
                stage("Buy", 120, 135, DONE),
                stage("Mill", 480, 660, DONE),
                stage("Build", 1080, 825, UNDER_WAY),
                stage("Fit", 420, 0, AHEAD),
                stage("Finish", 480, 0, AHEAD),
                stage("Install", 540, 0, AHEAD),
                stage("Close", 60, 0, AHEAD));
    }

    static List<StickWait> cures() {
        return List.of(
                new StickWait(4, "edge banding cures until 18:40"), new StickWait(6, "oil, full cure until Thu 3 Dec"));
    }

    public static Map<String, StoryStick> all() {
        var all = new LinkedHashMap<String, StoryStick>();
        all.put("usual", StoryStick.of(windowSeat(), cures(), forecast(3480, 3960, 4620)));
        all.put("no forecast", StoryStick.of(windowSeat(), cures(), null));
        all.put(
                "nothing logged",
                StoryStick.of(
                        List.of(
                                stage("Measure", 60, 0, AHEAD),
                                stage("Build", 600, 0, AHEAD),
                                stage("Install", 240, 0, AHEAD)),
                        List.of(),
                        null));
        all.put(
                "nothing estimated",
                StoryStick.of(
                        List.of(
                                stage("Measure", 0, 90, DONE),
                                stage("Bid", 0, 0, UNDER_WAY),
                                stage("Build", 0, 0, AHEAD)),
                        List.of(),
                        null));
        all.put("no stages", StoryStick.of(List.of(), List.of(), null));
        all.put(
                "one stage",
                StoryStick.of(
                        List.of(stage("Build", 480, 300, UNDER_WAY)),
                        List.of(new StickWait(0, "glue until 18:40")),
                        null));
        all.put(
                "huge overrun",
                StoryStick.of(
                        List.of(
                                stage("Measure", 60, 60, DONE),
                                stage("Mill", 240, 4800, DONE),
                                stage("Build", 600, 900, UNDER_WAY),
                                stage("Install", 120, 0, AHEAD)),
                        List.of(),
                        forecast(5600, 7000, 9000)));
        var twelve = new ArrayList<StickStage>();
        for (int i = 1; i <= 11; i++) {
            twelve.add(stage("Short stage " + i, 5, i < 5 ? 9 : 0, i < 5 ? DONE : i == 7 ? SKIPPED : AHEAD));
        }
        twelve.add(stage("The one long stage with a name to match <script>", 6000, 3333, UNDER_WAY));
        all.put(
                "twelve stages",
                StoryStick.of(
                        twelve,
                        List.of(
                                new StickWait(2, "glue until 18:40"),
                                new StickWait(11, "lacquer <b> until Monday week in the far shed at the least")),
                        forecast(5900, 6100, 6700)));
        all.put("progress", StoryStick.progress(windowSeat(), List.of()));
        var named = new LinkedHashMap<String, StoryStick>();
        all.forEach((name, stick) -> named.put(name, stick.named(name.replace(' ', '-'))));
        return named;
    }
}
