package org.tallywright.bench.recalibration;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.tallywright.bench.BenchInput;
import org.tallywright.bench.Benchmark;
import org.tallywright.bench.Figures;
import org.tallywright.bench.pages.BenchShop;
import org.tallywright.calibration.Recalibration;

/**
 * Closes jobs in two shops of ten years, one of few people (274 jobs of 20 tasks) and one of twelve (2,740), and waits for each
 * calibration. Stated for each stage: the time on the clock, median and best of seven; for the whole also the processor time of
 * the one thread that works, which a busy machine changes less. The first calibration looks back at every job; so does one after
 * a starting rate was changed.
 */
public final class RecalibrationBenchmark implements Benchmark {
    private static final int CLOSED = 7;
    private static final int WARM_UP = 3;

    @Override
    public String name() {
        return "recalibration";
    }

    @Override
    public String purpose() {
        return "a closed job in a shop of ten years, until its calibration is in use; -Dbench.data=few or twelve for one of both";
    }

    @Override
    public Figures run(BenchInput input) throws IOException {
        Path folder = Files.createTempDirectory("tallywright-bench");
        try {
            Figures figures = new Figures();
            if (!input.data().equals("twelve")) {
                shop(folder.resolve("few"), "few", 274, 24, figures);
            }
            if (!input.data().equals("few")) {
                shop(folder.resolve("twelve"), "twelve", 2740, 248, figures);
            }
            return figures.add(
                    "load", ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(), "processes");
        } catch (SQLException | InterruptedException e) {
            throw new IOException(e);
        } finally {
            delete(folder);
        }
    }

    private static void shop(Path folder, String name, int won, int lost, Figures figures)
            throws SQLException, InterruptedException {
        try (BenchShop shop = BenchShop.start(folder);
                Connection connection = shop.connectTrusted()) {
            shop.fill(won, lost, 3650);
            Recalibration recalibration = shop.bean(Recalibration.class);
            Run first = run(recalibration, "first");
            List<Run> closed = new ArrayList<>();
            for (int n = 0; n < WARM_UP + CLOSED; n++) {
                close(connection);
                Run run = run(recalibration, "a job closed");
                if (n >= WARM_UP) {
                    closed.add(run);
                }
            }
            change(connection);
            Run rate = run(recalibration, "a rate changed");
            figures.add(name + "_first_seconds", first.took().all(), "seconds");
            figures.add(name + "_first_cpu_seconds", first.processor(), "seconds");
            stage(figures, name + "_read", closed, run -> run.took().read());
            stage(figures, name + "_look_back", closed, run -> run.took().lookBack());
            stage(figures, name + "_fit", closed, run -> run.took().fit());
            stage(figures, name + "_keep", closed, run -> run.took().keep());
            stage(figures, name + "_all", closed, run -> run.took().all());
            stage(figures, name + "_all_cpu", closed, Run::processor);
            figures.add(name + "_rate_seconds", rate.took().all(), "seconds");
            figures.add(name + "_rate_cpu_seconds", rate.processor(), "seconds");
        }
    }

    private record Run(Recalibration.Took took, double processor) {}

    private static Run run(Recalibration recalibration, String why) throws InterruptedException {
        double before = processor();
        Recalibration.Took last = recalibration.took().orElse(null);
        recalibration.ask(why);
        while (true) {
            Recalibration.Took now = recalibration.took().orElse(null);
            if (now != null && now != last) {
                return new Run(now, processor() - before);
            }
            Thread.sleep(10);
        }
    }

    /** Processor seconds of the thread that makes calibrations. */
    private static double processor() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                        .filter(thread ->
                                thread != null && thread.getThreadName().equals("calibration"))
                        .mapToLong(ThreadInfo::getThreadId)
                        .map(threads::getThreadCpuTime)
                        .max()
                        .orElse(0)
                / 1e9;
    }

    private static void close(Connection connection) throws SQLException {
        run(connection, """
                with closed as (update job set state = 'closed', closed_on = current_date
                    where id = (select id from job where state = 'running' order by number limit 1) returning id)
                update task set state = 'done', done_on = current_date
                where job_id in (select id from closed) and state <> 'dropped'""");
    }

    private static void change(Connection connection) throws SQLException {
        run(
                connection,
                "update task_kind set unit_hours = unit_hours * 1.1 where code = (select min(code) from task_kind)");
    }

    private static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static void stage(Figures figures, String name, List<Run> runs, ToDoubleFunction<Run> seconds) {
        double[] sorted = runs.stream().mapToDouble(seconds).sorted().toArray();
        figures.add(name + "_seconds", sorted[sorted.length / 2], "seconds");
        figures.add(name + "_best_seconds", sorted[0], "seconds");
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> tree = Files.walk(folder)) {
            for (Path path : tree.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
