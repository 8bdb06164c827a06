package org.tallywright.bench.calibration;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.Arrays;
import java.util.List;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;

/** Times with a warm JIT and a cold optimiser: medians of 7 after 5 unmeasured runs. */
final class Speed {

    private static final int WARM_UP = 5;
    private static final int RUNS = 7;
    private static final int LINES = 40;

    private Speed() {}

    static Figures measure(PastTasks past, CalibrationSettings settings) {
        List<Observation> all = PastTasks.observations(past.byKnown());
        double fit = median(() -> Calibrator.fit(all, settings));
        Calibration calibration = Calibrator.fit(all, settings);
        List<PlannedTask> planned =
                past.byKnown().stream().map(PastTask::planned).toList();
        List<PlannedTask> some = planned.subList(Math.max(0, planned.size() - 500), planned.size());
        double predict = median(() -> some.forEach(calibration::taskForecast));
        List<PlannedTask> lines = planned.subList(Math.max(0, planned.size() - LINES), planned.size());
        double price = median(() -> calibration.jobForecast(lines));
        return new Figures()
                .add("fit_seconds", fit, "seconds")
                .add("predict_tasks_per_second", some.size() / predict, "tasks/second")
                .add("price_40_lines_ms", 1000 * price, "milliseconds")
                .add("peak_heap_mb", peakHeap(), "MB");
    }

    private static double median(Runnable work) {
        for (int run = 0; run < WARM_UP; run++) {
            work.run();
        }
        double[] seconds = new double[RUNS];
        for (int run = 0; run < RUNS; run++) {
            long start = System.nanoTime();
            work.run();
            seconds[run] = (System.nanoTime() - start) / 1e9;
        }
        Arrays.sort(seconds);
        return seconds[RUNS / 2];
    }

    private static double peakHeap() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                        .filter(pool -> pool.getType() == MemoryType.HEAP)
                        .map(MemoryPoolMXBean::getPeakUsage)
                        .mapToLong(usage -> usage.getUsed())
                        .sum()
                / 1e6;
    }
}
