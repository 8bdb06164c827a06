package org.tallywright.web.stick;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;

/**
 * A job's story stick: stage marks in proportion to their estimated hours, filled by what was logged, the overrun drawn
 * beyond its mark, waits hatched. Two drawings (lying and upright) and the same in words. All text is escaped here.
 *
 * <p>Who may not see hours gets {@link #progress}: equal stages, filled by their state, from which no estimate can be read.
 */
public final class StoryStick {
    private final StickPlan plan;
    private final String key;
    private final Hours besides;

    private StoryStick(StickPlan plan, String key, Hours besides) {
        this.plan = plan;
        this.key = key;
        this.besides = besides;
    }

    /** For the owner and the lead. */
    public static StoryStick of(List<StickStage> stages, List<StickWait> waits, @Nullable StickForecast forecast) {
        return new StoryStick(
                StickPlan.byHours(List.copyOf(stages), List.copyOf(waits), forecast), "stick", Hours.ZERO);
    }

    /** For the helper and the client: states only; whatever hours the stages carry are left out. */
    public static StoryStick progress(List<StickStage> stages, List<StickWait> waits) {
        return new StoryStick(StickPlan.byState(List.copyOf(stages), List.copyOf(waits)), "stick", Hours.ZERO);
    }

    /** For a page with several sticks: a name for the ids inside, such as the job's number. */
    public StoryStick named(String name) {
        return new StoryStick(plan, "stick-" + name.replaceAll("[^A-Za-z0-9-]", ""), besides);
    }

    /** Hours on no stage, which the stick cannot draw: they are said, so that it and the job's sum agree. */
    public StoryStick besides(Hours onNoTask) {
        return new StoryStick(plan, key, onNoTask);
    }

    /** The lying stick, an SVG element. */
    public String wide() {
        return new LyingStick(plan, key + "-l").draw();
    }

    /** The upright stick for a phone, an SVG element. */
    public String narrow() {
        return new UprightStick(plan, key + "-u").draw();
    }

    /** Whether there is nothing to draw; the words say so. */
    public boolean empty() {
        return plan.stages().isEmpty();
    }

    /** The sum in one sentence, without a full stop. */
    public String sum() {
        return StickWords.sum(plan, besides);
    }

    /** The same in words, one sentence for each stage, wait and sum. */
    public List<String> words() {
        return StickWords.of(plan, besides);
    }

    /** Estimated person-hours of all stages. */
    public Hours estimated() {
        return plan.estimated();
    }
}
