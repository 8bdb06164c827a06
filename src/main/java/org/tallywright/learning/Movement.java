package org.tallywright.learning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.Forecaster;
import org.tallywright.calibration.Forecaster.TaskNow;

/**
 * What moved a running job's forecast between two days. Each task's part is what it took, or may come to on the mean, now
 * less then, both with the calibration of then; {@code rest} is what these do not explain: smaller movements, and the allowance
 * for hours that no line names. What a newer calibration says differently of the same job is a part of its own.
 *
 * @param on the day of the earlier forecast
 * @param then likely hours at the end, as said then
 * @param now the same today
 * @param tasks those that moved it by half an hour and more, the most first
 * @param onNoLine hours since then that no line names
 * @param calibration moved by a newer calibration; null where it cannot be told apart
 */
public record Movement(
        LocalDate on,
        double then,
        double now,
        List<Part> tasks,
        double onNoLine,
        double rest,
        @Nullable Double calibration,
        Basis basis) {
    private static final double WORTH_A_LINE = 0.5;

    /** What the earlier forecast is. */
    public enum Basis {
        /** Kept on that day, and the calibration of then is still the one in use. */
        SAME_CALIBRATION,
        /** Kept on that day; the calibration is a newer one since, and told apart. */
        NEWER_CALIBRATION,
        /** Kept on that day, but its calibration is no longer kept. */
        CALIBRATION_GONE,
        /** Not kept: worked out now, with the calibration of today on both days. */
        WORKED_OUT
    }

    /** What became of a task since then. */
    public enum Fate {
        OPEN,
        FINISHED,
        ADDED,
        DROPPED
    }

    public record Part(String name, Fate fate, double then, double now) {
        public double hours() {
            return now - then;
        }
    }

    /** @param same today's state with the calibration of then */
    static Movement kept(Forecaster.Kept then, Forecaster.Running same, Forecaster.Running now, boolean newer) {
        return of(
                then,
                same,
                now.atEnd().median(),
                now.atEnd().median() - same.atEnd().median(),
                newer ? Basis.NEWER_CALIBRATION : Basis.SAME_CALIBRATION);
    }

    static Movement keptWithout(Forecaster.Kept then, Forecaster.Running now) {
        return of(then, now, now.atEnd().median(), null, Basis.CALIBRATION_GONE);
    }

    static Movement workedOut(LocalDate on, Forecaster.Running then, Forecaster.Running now) {
        Forecaster.Kept was =
                new Forecaster.Kept(on, then.atEnd(), then.soFar(), then.onNoLine(), null, then.jobs(), then.tasks());
        return of(was, now, now.atEnd().median(), null, Basis.WORKED_OUT);
    }

    private static Movement of(
            Forecaster.Kept then, Forecaster.Running work, double now, @Nullable Double calibration, Basis basis) {
        List<Part> parts = parts(then.tasks(), work.tasks());
        double onNoLine = work.onNoLine() - then.onNoLine();
        double explained = onNoLine + parts.stream().mapToDouble(Part::hours).sum();
        double moved = work.atEnd().median() - then.atEnd().median();
        return new Movement(
                then.on(), then.atEnd().median(), now, parts, onNoLine, moved - explained, calibration, basis);
    }

    private static List<Part> parts(Map<UUID, TaskNow> then, Map<UUID, TaskNow> now) {
        List<Part> parts = new ArrayList<>();
        now.forEach((task, is) -> {
            TaskNow was = then.get(task);
            if (was == null) {
                parts.add(new Part(is.name(), Fate.ADDED, 0, is.hours()));
            } else {
                Fate fate = is.done() && !was.done() ? Fate.FINISHED : Fate.OPEN;
                parts.add(new Part(is.name(), fate, was.hours(), is.hours()));
            }
        });
        then.forEach((task, was) -> {
            if (!now.containsKey(task)) {
                parts.add(new Part(was.name(), Fate.DROPPED, was.hours(), 0));
            }
        });
        return parts.stream()
                .filter(part -> Math.abs(part.hours()) >= WORTH_A_LINE)
                .sorted(Comparator.comparingDouble((Part part) -> Math.abs(part.hours()))
                        .reversed())
                .toList();
    }
}
