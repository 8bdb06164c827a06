package org.tallywright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.tallywright.bench.calibration.CalibrationBenchmark;
import org.tallywright.bench.cutting.CuttingBenchmark;
import org.tallywright.bench.pages.PagesBenchmark;
import org.tallywright.bench.pages.SavesBenchmark;
import org.tallywright.bench.recalibration.RecalibrationBenchmark;

/**
 * Runs the benchmark named by -Dbench, on -Dbench.data where it needs a file, and writes NAME.csv into -Dbench.out. Without a
 * name it lists them.
 */
public final class Bench {

    private static final List<Benchmark> ALL = List.of(
            new CalibrationBenchmark(),
            new RecalibrationBenchmark(),
            new CuttingBenchmark(),
            new PagesBenchmark(),
            new SavesBenchmark());

    private Bench() {}

    public static void main(String[] args) throws IOException {
        String name = System.getProperty("bench", "list");
        BenchInput input = new BenchInput(
                System.getProperty("bench.data", ""), Path.of(System.getProperty("bench.out", "target/bench")));
        for (Benchmark benchmark : ALL) {
            if (benchmark.name().equals(name)) {
                Figures figures = benchmark.run(input);
                Path file = input.out().resolve(name + ".csv");
                figures.write(file);
                figures.print();
                System.out.println("written to " + file);
                return;
            }
        }
        System.out.println("Benchmarks, to be run by -Dbench=NAME:");
        ALL.forEach(benchmark -> System.out.println("  " + benchmark.name() + "  " + benchmark.purpose()));
        if (!name.equals("list")) {
            throw new IllegalArgumentException("no benchmark is called " + name);
        }
    }
}
