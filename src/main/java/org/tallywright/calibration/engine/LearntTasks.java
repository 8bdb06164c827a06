package org.tallywright.calibration.engine;

import java.util.ArrayList;
import java.util.List;

/**
 * The observations a calibration can learn from, with y = ln(actual/estimate), and notes on the others.
 *
 * <p>An estimate or actual of zero, below zero or not a number cannot enter a logarithm and is left out. A tiny actual is raised
 * to the smallest (0.05 h); |y| is cut at the largest log ratio, so a thousandfold typing error counts like a bad task.
 */
record LearntTasks(List<Observation> tasks, double[] logRatio, List<Note> notes) {

    static LearntTasks from(List<Observation> observations, CalibrationSettings settings) {
        List<Observation> tasks = new ArrayList<>();
        List<Double> ratios = new ArrayList<>();
        List<Note> notes = new ArrayList<>();
        for (Observation observation : observations) {
            double estimate = observation.estimateHours();
            double actual = observation.actualHours();
            if (!(estimate > 0) || Double.isInfinite(estimate)) {
                notes.add(new Note(observation, Note.Treatment.NO_ESTIMATE));
                continue;
            }
            if (!(actual > 0) || Double.isInfinite(actual)) {
                notes.add(new Note(observation, Note.Treatment.NO_HOURS));
                continue;
            }
            if (actual < settings.limits().smallestActual()) {
                notes.add(new Note(observation, Note.Treatment.RAISED_TO_FEWEST));
                actual = settings.limits().smallestActual();
            }
            double y = Math.log(actual / estimate);
            double cut = Math.max(
                    -settings.limits().largestLogRatio(),
                    Math.min(settings.limits().largestLogRatio(), y));
            if (cut != y) {
                notes.add(new Note(observation, Note.Treatment.RATIO_CUT));
            }
            tasks.add(observation);
            ratios.add(cut);
        }
        double[] logRatio = ratios.stream().mapToDouble(Double::doubleValue).toArray();
        return new LearntTasks(List.copyOf(tasks), logRatio, List.copyOf(notes));
    }

    int size() {
        return tasks.size();
    }
}
