package org.tallywright.bench.cutting;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.tallywright.bench.BenchInput;
import org.tallywright.bench.Benchmark;
import org.tallywright.bench.Figures;
import org.tallywright.cutting.BarPart;
import org.tallywright.cutting.BarPlanner;
import org.tallywright.cutting.BarStock;
import org.tallywright.cutting.Grain;
import org.tallywright.cutting.OneSheet;
import org.tallywright.cutting.SheetJobs;
import org.tallywright.cutting.SheetPart;
import org.tallywright.cutting.SheetPlan;
import org.tallywright.cutting.SheetPlanner;
import org.tallywright.cutting.SheetStock;
import org.tallywright.cutting.ValuedPart;

/** Known optima beside ours, and the seconds each took. */
public final class CuttingBenchmark implements Benchmark {
    private static final int NODES = 20_000;
    /** So many of the thirty jobs take at most one sheet more than their area. */
    private static final int WITHIN = 25;

    /** Beside the seconds on the wall, which other work on the machine stretches. */
    private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

    @Override
    public String name() {
        return "cutting";
    }

    @Override
    public String purpose() {
        return "layouts of bars and sheets against known optima, and 30 jobs of 120 parts";
    }

    @Override
    public Figures run(BenchInput input) throws IOException {
        Figures figures = new Figures();
        bars(figures);
        oneSheet(figures);
        fewestSheets(figures);
        jobs(figures);
        return figures;
    }

    private static void bars(Figures figures) throws IOException {
        List<CSVRecord> instances = rows("instances_1d.csv");
        for (CSVRecord optimum : rows("optima_1d.csv")) {
            List<BarPart> parts = of(instances, optimum).stream()
                    .map(row -> new BarPart(number(row, "length"), (int) number(row, "demand")))
                    .toList();
            List<BarStock> stock = List.of(BarStock.bought(number(optimum, "capacity")));
            compare(
                    figures,
                    "bars_" + optimum.get("instance"),
                    number(optimum, "optimal_stock_pieces"),
                    () -> BarPlanner.plan(stock, parts, 0, 0).bars().size(),
                    "bars");
        }
    }

    private static void oneSheet(Figures figures) throws IOException {
        List<CSVRecord> instances = rows("instances_2d.csv");
        for (CSVRecord optimum : rows("optima_2d.csv")) {
            String problem = optimum.get("problem");
            if (problem.startsWith("one sheet")) {
                // The value column of ngcut holds areas, not the values that its optima are of: held against the
                // sheet's.
                boolean area = optimum.get("instance").startsWith("ngcut");
                boolean unlimited = problem.contains("unlimited copies");
                boolean turnable = problem.contains("rotation;") && !problem.contains("no rotation");
                List<CSVRecord> rows = of(instances, optimum);
                List<ValuedPart> parts = rows.stream()
                        .map(row -> new ValuedPart(
                                number(row, "piece_width"),
                                number(row, "piece_height"),
                                unlimited ? BarStock.ANY : (int) number(row, "copies"),
                                number(row, "value"),
                                turnable))
                        .toList();
                SheetStock sheet = sheet(rows.get(0));
                compare(
                        figures,
                        "sheet_" + optimum.get("instance") + (turnable ? "_turnable" : "")
                                + (area ? "_area" : problem.contains("; guillotine") ? "_guillotine" : "_any_layout"),
                        area ? sheet.length() * sheet.width() : number(optimum, "optimum"),
                        () -> OneSheet.best(sheet.length(), sheet.width(), parts, NODES)
                                .value(),
                        "value");
            }
        }
    }

    private static void fewestSheets(Figures figures) throws IOException {
        List<CSVRecord> instances = rows("instances_2d.csv");
        for (CSVRecord optimum : rows("optima_2d.csv")) {
            if (optimum.get("problem").startsWith("fewest sheets")) {
                List<CSVRecord> rows = of(instances, optimum);
                List<SheetPart> parts = new ArrayList<>();
                for (CSVRecord row : rows) {
                    for (int n = 0; n < number(row, "copies"); n++) {
                        parts.add(
                                new SheetPart(number(row, "piece_width"), number(row, "piece_height"), Grain.ALONG, 0));
                    }
                }
                SheetStock sheet = sheet(rows.get(0));
                compare(
                        figures,
                        "sheets_" + optimum.get("instance"),
                        number(optimum, "optimum"),
                        () -> SheetPlanner.plan(sheet, List.of(), parts, 0, 0).bought(),
                        "sheets");
            }
        }
    }

    private static void jobs(Figures figures) {
        List<Double> seconds = new ArrayList<>();
        int within = 0;
        double cpuSeconds = 0;
        for (SheetJobs job : SheetJobs.all()) {
            long cpuBefore = CPU.getCurrentThreadCpuTime();
            long started = System.nanoTime();
            SheetPlan plan = job.plan();
            double took = (System.nanoTime() - started) / 1e9;
            double cpu = (CPU.getCurrentThreadCpuTime() - cpuBefore) / 1e9;
            job.check(plan);
            seconds.add(took);
            cpuSeconds = Math.max(cpuSeconds, cpu);
            within += plan.bought() <= plan.areaBound() + 1 ? 1 : 0;
            String name = String.format("job_%02d", job.number());
            figures.add(name + "_area_bound", plan.areaBound(), "sheets")
                    .add(name + "_ours", plan.bought(), "sheets")
                    .add(name + "_seconds", took, "s")
                    .add(name + "_cpu_seconds", cpu, "s");
        }
        double[] sorted =
                seconds.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        figures.add("jobs_within_one_sheet", within, "jobs")
                .add("jobs_median_seconds", sorted[sorted.length / 2], "s")
                .add("jobs_longest_seconds", sorted[sorted.length - 1], "s")
                .add("jobs_longest_cpu_seconds", cpuSeconds, "s")
                .add(
                        "load_average",
                        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
                        "processes");
        if (within < WITHIN) {
            throw new IllegalStateException(within + " jobs within one sheet of their area, not " + WITHIN);
        }
    }

    private static void compare(
            Figures figures, String name, double known, Supplier<? extends Number> ours, String unit) {
        long started = System.nanoTime();
        double found = ours.get().doubleValue();
        double took = (System.nanoTime() - started) / 1e9;
        figures.add(name + "_known", known, unit)
                .add(name + "_ours", found, unit)
                .add(name + "_seconds", took, "s");
    }

    private static List<CSVRecord> of(List<CSVRecord> instances, CSVRecord optimum) {
        return instances.stream()
                .filter(row -> row.get("instance").equals(optimum.get("instance")))
                .collect(Collectors.toList());
    }

    private static SheetStock sheet(CSVRecord row) {
        return new SheetStock(number(row, "sheet_width"), number(row, "sheet_height"));
    }

    private static long number(CSVRecord row, String column) {
        return Long.parseLong(row.get(column));
    }

    private static List<CSVRecord> rows(String file) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (InputStream stream = SheetJobs.class.getResourceAsStream(file)) {
            if (stream == null) {
                throw new IOException("no " + file + " on the class path");
            }
            Reader reader = new InputStreamReader(stream, StandardCharsets.UTF_8);
            return format.parse(reader).getRecords();
        }
    }
}
