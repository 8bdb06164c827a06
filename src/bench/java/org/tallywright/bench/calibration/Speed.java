package org.tallywright.bench.calibration;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.ThreadMXBean;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.Calibration;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.CostModel;
import org.tallywright.calibration.engine.Draws;
import org.tallywright.calibration.engine.MaterialYields;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.PlannedTask;
import org.tallywright.calibration.engine.TotalSettings;
import org.tallywright.calibration.engine.YieldObservation;

/**
 * Times with a warm JIT and a cold optimiser: medians of 7 after 5 unmeasured runs, of 200 after 50 for a price. Beside the time on the clock stands the
 * processor time of the one thread that works, which a busy machine changes less.
 */
final class Speed {

    private static final int WARM_UP = 5;
    private static final int RUNS = 7;
    private static final int LINES = 40;
    private static final int PRICES = 200;
    private static final int MATERIALS = 12;
    private static final MaterialYields YIELDS = MaterialYields.learn(IntStream.range(0, 300)
            .mapToObj(n -> new YieldObservation(
                    "material " + n % MATERIALS,
                    "",
                    "job " + n / 6,
                    40,
                    24 + n % 9,
                    0.7,
                    LocalDate.of(2020, 1, 1).plusDays(n)))
            .toList());

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
        Time price = median(() -> calibration.jobForecast(lines), PRICES);
        Time money = median(() -> cost(calibration.jobForecast(lines).draws()), PRICES);
        return new Figures()
                .add("fit_seconds", fit.clock(), "seconds")
                .add("fit_cpu_seconds", fit.processor(), "seconds")
                .add("predict_tasks_per_second", some.size() / predict.clock(), "tasks/second")
                .add("price_40_lines_ms", 1000 * price.clock(), "milliseconds")
                .add("price_40_lines_cpu_ms", 1000 * price.processor(), "milliseconds")
                .add("price_40_lines_best_ms", 1000 * price.best(), "milliseconds")
                .add("price_40_lines_money_ms", 1000 * money.clock(), "milliseconds")
                .add("price_40_lines_money_best_ms", 1000 * money.best(), "milliseconds")
                .add("price_40_lines_money_cpu_ms", 1000 * money.processor(), "milliseconds")
                .add("peak_heap_mb", peakHeap(), "MB");
    }

    /** The money of the same job: two people, twelve materials with yields of their own. */
    private static void cost(Draws hours) {
        List<CostModel.Material> materials = IntStream.range(0, MATERIALS)
                .mapToObj(m -> new CostModel.Material(
                        "material " + m, 20 + m, YIELDS.draws("material " + m, "", 0.7), 1, 12.5, 0.08, 5))
                .toList();
        List<CostModel.Worker> crew =
                List.of(new CostModel.Worker("one", 0.6, 48), new CostModel.Worker("two", 0.4, 31));
        new CostModel(TotalSettings.standard()).draws(hours, new CostModel.Hour(41.2, crew, 0.4, 15), materials, 120);
    }

    /** Seconds; {@code clock} and {@code processor} are medians. */
    private record Time(double clock, double best, double processor) {}

    private static Time median(Runnable work) {
        return median(work, RUNS);
    }

    private static Time median(Runnable work, int runs) {
        for (int run = 0; run < Math.max(WARM_UP, runs / 4); run++) {
            work.run();
        }
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double[] clock = new double[runs];
        double[] processor = new double[runs];
        for (int run = 0; run < runs; run++) {
            long start = System.nanoTime();
            long busy = threads.getCurrentThreadCpuTime();
            work.run();
            processor[run] = (threads.getCurrentThreadCpuTime() - busy) / 1e9;
            clock[run] = (System.nanoTime() - start) / 1e9;
        }
        Arrays.sort(clock);
        Arrays.sort(processor);
        return new Time(clock[runs / 2], clock[0], processor[runs / 2]);
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
