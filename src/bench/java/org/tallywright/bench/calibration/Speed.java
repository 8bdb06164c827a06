package org.tallywright.bench.calibration;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.List;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;

/**
 * Times with a warm JIT and a cold optimiser: medians of 7 after 5 unmeasured runs. Beside the time on the clock stands the
 * processor time of the one thread that works, which a busy machine changes less.
 */
final class Speed {

    private static final int WARM_UP = 5;
    private static final int RUNS = 7;
    private static final int LINES = 40;

    private Speed() {}

    static Figures measure(PastTasks past, CalibrationSettings settings) {
        List<Observation> all = PastTasks.observations(past.byKnown());
        Time fit = median(() -> Calibrator.fit(all, settings));
        Calibration calibration = Calibrator.fit(all, settings);
        List<PlannedTask> planned =
                past.byKnown().stream().map(PastTask::planned).toList();
        List<PlannedTask> some = planned.subList(Math.max(0, planned.size() - 500), planned.size());
        Time predict = median(() -> some.forEach(calibration::taskForecast));
        List<PlannedTask> lines = planned.subList(Math.max(0, planned.size() - LINES), planned.size());
        Time price = median(() -> calibration.jobForecast(lines));
        return new Figures()
                .add("fit_seconds", fit.clock(), "seconds")
                .add("fit_cpu_seconds", fit.processor(), "seconds")
                .add("predict_tasks_per_second", some.size() / predict.clock(), "tasks/second")
                .add("price_40_lines_ms", 1000 * price.clock(), "milliseconds")
                .add("price_40_lines_cpu_ms", 1000 * price.processor(), "milliseconds")
                .add("peak_heap_mb", peakHeap(), "MB");
    }

    /** Seconds. */
    private record Time(double clock, double processor) {}

    private static Time median(Runnable work) {
        for (int run = 0; run < WARM_UP; run++) {
            work.run();
        }
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double[] clock = new double[RUNS];
        double[] processor = new double[RUNS];
        for (int run = 0; run < RUNS; run++) {
            long start = System.nanoTime();
            long busy = threads.getCurrentThreadCpuTime();
            work.run();
            processor[run] = (threads.getCurrentThreadCpuTime() - busy) / 1e9;
            clock[run] = (System.nanoTime() - start) / 1e9;
        }
        Arrays.sort(clock);
        Arrays.sort(processor);
        return new Time(clock[RUNS / 2], processor[RUNS / 2]);
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
