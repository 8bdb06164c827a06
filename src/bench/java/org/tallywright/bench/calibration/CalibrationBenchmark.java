package org.tallywright.bench.calibration;

import java.io.IOException;
import org.tallywright.bench.BenchInput;
import org.tallywright.bench.Benchmark;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.TotalSettings;

/**
 * How well the engine predicts a file of finished tasks: single tasks by monthly refit, job totals and running jobs by quarterly
 * refit, small samples, speed. The engine runs with its standard settings; that of bid time no longer counts in
 * running jobs.
 */
public final class CalibrationBenchmark implements Benchmark {

    @Override
    public String name() {
        return "calibration";
    }

    @Override
    public String purpose() {
        return "forecasts of hours against what was taken, on -Dbench.data=FILE.csv";
    }

    @Override
    public Figures run(BenchInput input) throws IOException {
        PastTasks past = PastTasks.read(input.dataFile());
        CalibrationSettings settings = CalibrationSettings.standard();
        CalibrationSettings running =
                settings.withTotals(TotalSettings.standard().withBlendUntil(0));
        QuarterlyFits fits = new QuarterlyFits(past, running);
        long start = System.nanoTime();
        Figures figures = new Figures()
                .add("rows", past.rows(), "rows")
                .add("usable", past.byKnown().size(), "rows")
                .addAll(SingleTasks.measure(past, settings))
                .addAll(JobTotals.measure(past, fits))
                .addAll(RunningJobs.measure(past, fits))
                .addAll(SmallSamples.measure(past, settings))
                .addAll(Speed.measure(past, settings))
                .addAll(ModelFit.measure(past));
        return figures.add("total_seconds", (System.nanoTime() - start) / 1e9, "seconds");
    }
}
