package org.tallywright.bench.pages;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.tallywright.bench.BenchInput;
import org.tallywright.bench.Benchmark;
import org.tallywright.bench.Figures;

/**
 * Eight people save a day of five entries at once, again and again; then what such saves say to the database is said once
 * more on eight bare connections at once. See src/docs/measured-pages.md.
 */
public final class SavesBenchmark implements Benchmark {
    private static final int PEOPLE = 8;
    private static final int EACH = 60;
    private static final int ROWS = 5;
    private static final int WARM = 100;

    @Override
    public String name() {
        return "saves";
    }

    @Override
    public String purpose() {
        return "a day of five entries saved by eight people at once, beside its own SQL by eight at once";
    }

    @Override
    public Figures run(BenchInput input) throws IOException {
        Path folder = Files.createTempDirectory("tallywright-bench");
        try (BenchShop shop = BenchShop.start(folder)) {
            shop.fill(274, 14, 365);
            return measured(shop);
        } catch (IOException | RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IOException(e);
        } finally {
            PagesBenchmark.delete(folder);
        }
    }

    private static Figures measured(BenchShop shop) throws Exception {
        SheetSaves sheets;
        try (Connection connection = shop.connect()) {
            // A day of its own for each save: the same task twice on one day is asked about.
            sheets = new SheetSaves(connection, ROWS, 1, 92);
        }
        Page save = Page.save("save", sheets);
        List<Visitor> people = new ArrayList<>();
        for (int n = 0; n < PEOPLE; n++) {
            people.add(shop.visitor());
        }
        for (int n = 0; n < WARM; n++) {
            save.visit(people.get(n % PEOPLE));
        }
        Times http = ManyUsers.measure(save, people, EACH);
        Times bare = bare(shop, recorded(shop, save, people.get(0)));
        return new Figures()
                .add("save_p50_ms", http.ms(0.5), "ms")
                .add("save_p99_ms", http.ms(0.99), "ms")
                .add("sql_p50_ms", bare.ms(0.5), "ms")
                .add("sql_p99_ms", bare.ms(0.99), "ms")
                .add("p99_ratio", http.ms(0.99) / bare.ms(0.99), "ratio");
    }

    /** What as many saves said, each taken back so that it can be said again. */
    private static Deque<Statements> recorded(BenchShop shop, Page save, Visitor visitor) throws Exception {
        Deque<Statements> tapes = new ArrayDeque<>();
        try (Connection connection = shop.connect()) {
            for (int n = 0; n < PEOPLE * EACH; n++) {
                Statements tape = new Statements();
                shop.recorder.start(tape);
                Page.Undo undo = save.visit(visitor);
                shop.recorder.stop();
                undo.run(connection);
                tapes.add(tape);
            }
        }
        return tapes;
    }

    private static Times bare(BenchShop shop, Deque<Statements> tapes) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(PEOPLE);
        try {
            List<Callable<Times>> people = new ArrayList<>();
            for (int person = 0; person < PEOPLE; person++) {
                List<Connection> own = shop.connections(3);
                List<Statements> mine = new ArrayList<>();
                for (int n = 0; n < EACH; n++) {
                    mine.add(tapes.remove());
                }
                people.add(() -> said(mine, own));
            }
            Times all = new Times();
            for (Future<Times> person : threads.invokeAll(people)) {
                all.addAll(person.get());
            }
            return all;
        } finally {
            threads.shutdownNow();
        }
    }

    private static Times said(List<Statements> tapes, List<Connection> own) throws Exception {
        Times times = new Times();
        for (Statements tape : tapes) {
            long start = System.nanoTime();
            tape.run(own);
            times.add(System.nanoTime() - start);
        }
        for (Connection connection : own) {
            connection.close();
        }
        return times;
    }
}
