package org.tallywright.web.stick;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;

/**
 * The geometry of a stick, before any drawing. Places are fractions of the axis: 0 at its start, 1 at its end. The axis
 * reaches from nothing to the farthest of the estimate, the longest overrun and the forecast, but never beyond
 * {@link #LONGEST} times the estimate: what lies farther is cut off there and {@code broken} says so.
 */
record StickPlan(
        List<StickStage> stages,
        List<StickWait> waits,
        @Nullable StickForecast forecast,
        boolean showsHours,
        double axisMinutes,
        boolean broken,
        List<Segment> segments) {

    static final double LONGEST = 1.6;

    /**
     * One stage's part of the stick.
     *
     * @param start its first mark
     * @param end its last mark
     * @param filled how far it is filled, between start and end
     * @param overEnd how far its overrun reaches beyond its end, equal to end if there is none
     */
    record Segment(double start, double end, double filled, double overEnd) {}

    static StickPlan byHours(List<StickStage> stages, List<StickWait> waits, @Nullable StickForecast forecast) {
        long total = stages.stream().mapToLong(s -> s.estimated().minutes()).sum();
        if (total == 0) {
            return equalStages(stages, waits, forecast, true);
        }
        double reach = Math.max(total, forecast == null ? 0 : forecast.high().minutes());
        long mark = 0;
        for (StickStage stage : stages) {
            mark += stage.estimated().minutes();
            reach = Math.max(reach, mark + (double) stage.over().minutes());
        }
        double axis = Math.min(reach, LONGEST * total);
        var segments = new ArrayList<Segment>();
        mark = 0;
        for (StickStage stage : stages) {
            double start = mark / axis;
            double filled =
                    (mark + Math.min(stage.logged().minutes(), stage.estimated().minutes())) / axis;
            mark += stage.estimated().minutes();
            double over = Math.min(1, (mark + (double) stage.over().minutes()) / axis);
            segments.add(new Segment(start, mark / axis, filled, over));
        }
        return new StickPlan(stages, waits, forecast, true, axis, reach > axis, List.copyOf(segments));
    }

    static StickPlan byState(List<StickStage> stages, List<StickWait> waits) {
        return equalStages(stages, waits, null, false);
    }

    /** With nothing estimated there is no proportion to keep: every stage gets the same length. */
    private static StickPlan equalStages(
            List<StickStage> stages, List<StickWait> waits, @Nullable StickForecast forecast, boolean showsHours) {
        var segments = new ArrayList<Segment>();
        double each = stages.isEmpty() ? 1 : 1.0 / stages.size();
        for (int i = 0; i < stages.size(); i++) {
            double part = switch (stages.get(i).state()) {
                case DONE -> 1;
                case UNDER_WAY -> .5;
                case AHEAD, SKIPPED -> 0;
            };
            segments.add(new Segment(i * each, (i + 1) * each, (i + part) * each, (i + 1) * each));
        }
        return new StickPlan(stages, waits, forecast, showsHours, 0, false, List.copyOf(segments));
    }

    /** Whether places stand for hours: something is estimated and may be shown. */
    boolean toScale() {
        return axisMinutes > 0;
    }

    /** Where so many hours lie on the axis, 1 at the most. */
    double place(Hours hours) {
        return Math.min(1, hours.minutes() / axisMinutes);
    }

    /** Whether so many hours lie on the axis and not beyond it. */
    boolean reaches(Hours hours) {
        return hours.minutes() <= axisMinutes + .5;
    }

    /** The end of the last stage: the estimate. */
    double end() {
        return segments.isEmpty() ? 1 : segments.get(segments.size() - 1).end();
    }

    Hours estimated() {
        return Hours.sum(stages.stream().map(StickStage::estimated).toList());
    }

    Hours logged() {
        return Hours.sum(stages.stream().map(StickStage::logged).toList());
    }

    /** The wait's mark: the end of the stage it follows. */
    double placeOf(StickWait wait) {
        return segments.isEmpty()
                ? 0
                : segments.get(Math.max(0, Math.min(wait.afterStage(), segments.size() - 1)))
                        .end();
    }

    /** Hours between two ticks: the smallest of 1, 2, 5, 10, 20 ... that leaves at most so many of them. */
    int tickHours(int most) {
        for (int decade = 1; ; decade *= 10) {
            for (int step : new int[] {1, 2, 5}) {
                if (axisMinutes / 60 / (step * decade) <= most) {
                    return step * decade;
                }
            }
        }
    }

    /** Whether the stage's overrun is cut off at the end of the axis. */
    boolean cutsOff(int stage) {
        return broken
                && !stages.get(stage).over().isZero()
                && segments.get(stage).end() * axisMinutes
                                + stages.get(stage).over().minutes()
                        > axisMinutes + .5;
    }
}
