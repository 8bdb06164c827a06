package org.tallywright.learning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tallywright.calibration.Forecaster;

/**
 * What moved a running job's forecast between two days. Each task's part is what it took, or may come to on the mean, now
 * less then; {@code rest} is what these do not explain: smaller movements,
 * and the allowance for hours that no line names.
 *
 * @param then likely hours at the end, as forecast then
 * @param now the same today
 * @param tasks those that moved it by half an hour and more, the most first
 * @param onNoLine hours since then that no line names
 */
public record Movement(double then, double now, List<Part> tasks, double onNoLine, double rest) {
    private static final double WORTH_A_LINE = 0.5;

    /** @param finished since then */
    public record Part(String name, boolean finished, double then, double now) {
        public double hours() {
            return now - then;
        }
    }

    static Movement between(Forecaster.Running then, Forecaster.Running now) {
        List<Part> parts = new ArrayList<>();
        double explained = now.onNoLine() - then.onNoLine();
        for (var each : now.tasks().entrySet()) {
            Forecaster.TaskNow was = then.tasks().get(each.getKey());
            Forecaster.TaskNow is = each.getValue();
            if (was != null) {
                Part part = new Part(is.name(), is.done() && !was.done(), was.hours(), is.hours());
                if (Math.abs(part.hours()) >= WORTH_A_LINE) {
                    explained += part.hours();
                    parts.add(part);
                }
            }
        }
        parts.sort(Comparator.comparingDouble((Part part) -> Math.abs(part.hours()))
                .reversed());
        double moved = now.atEnd().median() - then.atEnd().median();
        return new Movement(
                then.atEnd().median(),
                now.atEnd().median(),
                List.copyOf(parts),
                now.onNoLine() - then.onNoLine(),
                moved - explained);
    }

    public double moved() {
        return now - then;
    }
}
