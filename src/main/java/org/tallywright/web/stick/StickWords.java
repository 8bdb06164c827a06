package org.tallywright.web.stick;

import java.util.ArrayList;
import java.util.List;
import org.tallywright.shared.Hours;

/** The stick in words: what the drawing says, for those who do not see it and for those who want the figures. */
final class StickWords {
    private StickWords() {}

    /** What the drawing shows. */
    static List<String> of(StickPlan plan) {
        return of(plan, Hours.ZERO);
    }

    /** @param besides hours on no stage, which are not drawn */
    static List<String> of(StickPlan plan, Hours besides) {
        var words = new ArrayList<String>();
        words.add(sum(plan, besides));
        for (StickStage stage : plan.stages()) {
            String figure = figure(plan, stage);
            String over = over(plan, stage);
            words.add(stage.name() + ": " + state(stage)
                    + (figure.isEmpty() || figure.equals(state(stage)) ? "" : ", " + figure)
                    + (over.isEmpty() ? "" : ", " + over));
        }
        for (StickWait wait : plan.waits()) {
            words.add("Waiting after " + stageOf(plan, wait) + ": " + wait.text());
        }
        String forecast = forecast(plan);
        if (!forecast.isEmpty()) {
            words.add(forecast);
        }
        return List.copyOf(words);
    }

    /** The one sentence that sums up, with what no stage holds. */
    static String sum(StickPlan plan, Hours besides) {
        return sum(plan) + (plan.showsHours() && !besides.isZero() ? ", and " + besides + " on no task" : "");
    }

    private static String sum(StickPlan plan) {
        if (plan.stages().isEmpty()) {
            return "No stages yet";
        }
        if (!plan.showsHours()) {
            long counted = plan.stages().stream()
                    .filter(s -> s.state() != StickStage.State.SKIPPED)
                    .count();
            long done = plan.stages().stream()
                    .filter(s -> s.state() == StickStage.State.DONE)
                    .count();
            return done + " of " + counted + (counted == 1 ? " stage done" : " stages done");
        }
        Hours logged = plan.logged();
        String estimate = plan.estimated().isZero() ? "nothing estimated yet" : plan.estimated() + " estimated";
        if (logged.isZero()) {
            return plan.estimated().isZero() ? "Nothing estimated or logged yet" : "Nothing logged of " + estimate;
        }
        return logged + " logged" + (plan.estimated().isZero() ? ", " : " of ") + estimate;
    }

    /** A stage's hours as they stand beside its name; empty where hours are not shown or there are none. */
    static String figure(StickPlan plan, StickStage stage) {
        if (!plan.showsHours()) {
            return stage.state() == StickStage.State.AHEAD ? "" : state(stage);
        }
        if (stage.estimated().isZero() && stage.logged().isZero()) {
            return stage.state() == StickStage.State.SKIPPED ? "skipped" : "";
        }
        if (stage.estimated().isZero()) {
            return stage.logged() + " logged";
        }
        if (stage.logged().isZero()) {
            return stage.estimated().toString();
        }
        return stage.logged() + " of " + stage.estimated();
    }

    /** Empty where nothing is over, and where nothing at all was estimated to be over of. */
    static String over(StickPlan plan, StickStage stage) {
        return plan.toScale() && !stage.over().isZero() ? stage.over() + " over" : "";
    }

    static String state(StickStage stage) {
        return switch (stage.state()) {
            case AHEAD -> "ahead";
            case UNDER_WAY -> "under way";
            case DONE -> "done";
            case SKIPPED -> "skipped";
        };
    }

    static String forecast(StickPlan plan) {
        StickForecast forecast = plan.forecast();
        return forecast == null
                ? ""
                : "Likely " + forecast.likely() + " at the end; four times in five between " + forecast.low() + " and "
                        + forecast.high() + ", from " + forecast.jobs() + (forecast.jobs() == 1 ? " job" : " jobs");
    }

    private static String stageOf(StickPlan plan, StickWait wait) {
        int last = plan.stages().size() - 1;
        return last < 0
                ? "the start"
                : plan.stages()
                        .get(Math.max(0, Math.min(wait.afterStage(), last)))
                        .name();
    }
}
