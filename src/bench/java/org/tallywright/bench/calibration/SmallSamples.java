package org.tallywright.bench.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;

/**
 * A shop's first tasks: 150 seeded draws of a person (in proportion to their tasks) and a point in that person's own sequence, the last n tasks before it to learn
 * from and the next 20 to forecast. Coverage counts ties as covered.
 */
final class SmallSamples {

    private static final int DRAWS = 150;
    private static final int NEXT = 20;
    private static final long SEED = 20_260_102L;

    private SmallSamples() {}

    static Figures measure(PastTasks past, CalibrationSettings settings) {
        Figures figures = new Figures();
        Figures scores = new Figures();
        for (int n : new int[] {5, 10, 20, 50}) {
            Score score = score(past, settings, n);
            figures.add("small" + n + "_central80", score.central80WithTies(), "share");
            scores.add("small" + n + "_crps_log", score.crpsLog(), "ln hours")
                    .add("small" + n + "_raw_crps_log", score.rawCrpsLog(), "ln hours");
        }
        return figures.addAll(scores);
    }

    private static Score score(PastTasks past, CalibrationSettings settings, int n) {
        SplittableRandom random = new SplittableRandom(SEED + n);
        Score score = new Score(4);
        List<List<PastTask>> sequences = sequences(past, n);
        for (int draw = 0; draw < DRAWS && !sequences.isEmpty(); draw++) {
            List<PastTask> own = drawn(sequences, random);
            int next = Math.min(NEXT, own.size() - n);
            int at = n + random.nextInt(own.size() - n - next + 1);
            Calibration calibration = Calibrator.fit(PastTasks.observations(own.subList(at - n, at)), settings);
            for (PastTask task : own.subList(at, at + next)) {
                score.add(calibration.taskForecast(task.planned()).hours(), task.estimate(), task.actual());
            }
        }
        return score;
    }

    private static List<PastTask> drawn(List<List<PastTask>> sequences, SplittableRandom random) {
        int left = random.nextInt(sequences.stream().mapToInt(List::size).sum());
        int k = 0;
        while (left >= sequences.get(k).size()) {
            left -= sequences.get(k++).size();
        }
        return sequences.get(k);
    }

    /** Each person's tasks where they are long enough; otherwise everybody's as one sequence. */
    private static List<List<PastTask>> sequences(PastTasks past, int n) {
        Map<String, List<PastTask>> byWorker = new LinkedHashMap<>();
        past.byKnown()
                .forEach(task -> byWorker.computeIfAbsent(task.worker(), worker -> new ArrayList<>())
                        .add(task));
        List<List<PastTask>> enough = byWorker.values().stream()
                .filter(tasks -> tasks.size() >= n + NEXT)
                .toList();
        if (!enough.isEmpty()) {
            return enough;
        }
        return past.byKnown().size() > n ? List.of(past.byKnown()) : List.of();
    }
}
