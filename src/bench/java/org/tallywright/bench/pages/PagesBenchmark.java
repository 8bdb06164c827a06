package org.tallywright.bench.pages;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.tallywright.bench.BenchInput;
import org.tallywright.bench.Benchmark;
import org.tallywright.bench.Figures;

/**
 * Two shops with jobs of equal size, 20,000 and 200,000 time entries, run side by side in this process so that what else
 * the machine does meets both alike. See src/docs/measured-pages.md.
 */
public final class PagesBenchmark implements Benchmark {
    private static final int WARM = 300;
    private static final int TURNS = 40;
    private static final int USERS = 4;
    private static final int REQUESTS_EACH = 25;

    @Override
    public String name() {
        return "pages";
    }

    @Override
    public String purpose() {
        return "the main pages in a shop of ten years, beside their own SQL; start and memory of the packaged jar";
    }

    @Override
    public Figures run(BenchInput input) throws IOException {
        Path folder = Files.createTempDirectory("tallywright-bench");
        try {
            Figures figures = new Figures();
            pages(folder, wanted(input.data()), figures);
            PackagedJar.Figures jar = PackagedJar.measure(jar(input), folder.resolve("large"), 60);
            figures.add("startup_ms", jar.startupMs(), "ms");
            figures.add("resident_mb", jar.residentMb(), "MB");
            figures.add("load", load(), "processes");
            return figures;
        } catch (IOException | RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IOException(e);
        } finally {
            delete(folder);
        }
    }

    private static void pages(Path folder, Predicate<String> wanted, Figures figures) throws Exception {
        try (BenchShop small = BenchShop.start(folder.resolve("small"));
                BenchShop large = BenchShop.start(folder.resolve("large"))) {
            small.fill(274, 14, 365);
            large.fill(2740, 248, 3650);
            say("filled: " + size(small) + "; " + size(large));
            List<Page> ofSmall = pages(small);
            List<Page> ofLarge = pages(large);
            for (int n = 0; n < ofLarge.size(); n++) {
                if (wanted.test(ofLarge.get(n).name())) {
                    page(small, ofSmall.get(n), large, ofLarge.get(n), figures);
                }
            }
        }
    }

    /** All pages, or those named by -Dbench.data=today,job. */
    private static Predicate<String> wanted(String names) {
        List<String> some = List.of(names.split(","));
        return page -> names.isBlank() || some.contains(page);
    }

    private static void page(BenchShop small, Page ofSmall, BenchShop large, Page ofLarge, Figures figures)
            throws Exception {
        String name = ofLarge.name();
        OneUser few = new OneUser(small, ofSmall, small.visitor(), small.connections(3));
        OneUser many = new OneUser(large, ofLarge, large.visitor(), large.connections(3));
        few.warm(name.equals("save") ? 60 : WARM);
        many.warm(name.equals("save") ? 60 : WARM);
        for (int n = 0; n < TURNS + 8; n++) {
            few.turn(n >= 8);
            many.turn(n >= 8);
        }
        double page = many.http.ms(0.5);
        double sql = many.bare.ms(0.5);
        figures.add(name + "_ms", page, "ms");
        figures.add(name + "_sql_ms", sql, "ms");
        figures.add(name + "_statements", many.statements(), "statements");
        figures.add(name + "_sql_ratio", page / sql, "ratio");
        figures.add(name + "_over_aim", page - (3 * sql + 3), "ms");
        figures.add(name + "_growth", page / few.http.ms(0.5), "ratio");
        List<Visitor> visitors = new ArrayList<>();
        for (int n = 0; n < USERS; n++) {
            visitors.add(large.visitor());
        }
        Times together = ManyUsers.measure(ofLarge, visitors, REQUESTS_EACH);
        figures.add(name + "_p50_ms", together.ms(0.5), "ms");
        figures.add(name + "_p99_ms", together.ms(0.99), "ms");
        say(
                "%s at load %.1f: page %.1f ms, SQL %.1f ms in %d statements, growth %.2f; of 4 users p50 %.1f ms, p99 %.1f ms"
                        .formatted(
                                name,
                                load(),
                                page,
                                sql,
                                many.statements(),
                                page / few.http.ms(0.5),
                                together.ms(0.5),
                                together.ms(0.99)));
    }

    private static List<Page> pages(BenchShop shop) throws SQLException {
        try (Connection connection = shop.connect()) {
            String job = "/jobs/" + one(connection, "select min(number) from job where state = 'running'");
            return List.of(
                    Page.read("today", "/"),
                    Page.read("job", job),
                    Page.save("save", new SheetSaves(connection)),
                    Page.read("jobs", "/jobs?state=all"),
                    Page.read("review", job + "/review"));
        }
    }

    private static String size(BenchShop shop) throws SQLException {
        try (Connection connection = shop.connect()) {
            return one(
                    connection,
                    "select count(*) || ' entries, ' || (select count(*) from job) || ' jobs, ' || "
                            + "(select count(*) from person) || ' people' from time_entry");
        }
    }

    private static String one(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }

    private static Path jar(BenchInput input) throws IOException {
        try (Stream<Path> files = Files.list(input.out().toAbsolutePath().getParent())) {
            return files.filter(file -> file.getFileName().toString().matches("tallywright-.*\\.jar"))
                    .findFirst()
                    .orElseThrow(() -> new IOException("package the application first"));
        }
    }

    private static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }

    private static void say(String line) {
        System.out.println(line);
    }

    static void delete(Path folder) throws IOException {
        try (Stream<Path> tree = Files.walk(folder)) {
            for (Path path : tree.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
