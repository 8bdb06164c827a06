package org.tallywright.bench.calibration;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.Distribution;
import org.tallywright.calibration.engine.Observation;

/** Single tasks, refitted at the start of each month on what was known by then; beside it pooled ratios as a baseline. */
final class SingleTasks {

    private SingleTasks() {}

    static Figures measure(PastTasks past, CalibrationSettings settings) {
        Score score = new Score(1);
        Score pooled = new Score(1);
        TreeMap<LocalDate, List<PastTask>> months = past.byKnown().stream()
                .collect(Collectors.groupingBy(
                        task -> task.estimated().withDayOfMonth(1), TreeMap::new, Collectors.toList()));
        months.forEach((month, tasks) -> {
            List<Observation> known = past.knownBefore(month);
            if (known.size() < Math.max(1, past.burnIn())) {
                return;
            }
            Calibration calibration = Calibrator.fit(known, settings, month);
            double[] ratios = ratios(known);
            for (PastTask task : tasks) {
                score.add(calibration.taskForecast(task.planned()).hours(), task.estimate(), task.actual());
                pooled.add(scaled(ratios, task.estimate()), task.estimate(), task.actual());
            }
        });
        return new Figures()
                .add("tasks_scored", score.count(), "tasks")
                .add("crps_log", score.crpsLog(), "ln hours")
                .add("crps_hours", score.crps(), "hours")
                .add("pinball_50", score.pinball50(), "hours")
                .add("pinball_80", score.pinball80(), "hours")
                .add("pinball_90", score.pinball90(), "hours")
                .add("pit_central80", score.central80(), "share")
                .add("pit_p80", score.p80(), "share")
                .add("pit_p90", score.p90(), "share")
                .add("mean_bias", score.meanBias(), "share")
                .add("pooled_crps_log", pooled.crpsLog(), "ln hours")
                .add("pooled_crps_hours", pooled.crps(), "hours")
                .add("pooled_mean_bias", pooled.meanBias(), "share");
    }

    private static double[] ratios(List<Observation> known) {
        double[] all = known.stream()
                .mapToDouble(task -> task.actualHours() / task.estimateHours())
                .sorted()
                .toArray();
        double[] kept = new double[Distribution.SIZE];
        Arrays.setAll(kept, m -> all[(int) ((m + 0.5) / kept.length * all.length)]);
        return kept;
    }

    private static Distribution scaled(double[] ratios, double estimate) {
        return Distribution.ofQuantiles(ratios).times(estimate);
    }
}
