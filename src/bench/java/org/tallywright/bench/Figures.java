package org.tallywright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The figures of one run in the order they were measured, written as metric,value,unit; NaN where there was too little data. */
public final class Figures {

    private final List<String> lines = new ArrayList<>();

    public Figures add(String metric, double value, String unit) {
        lines.add(String.format(Locale.ROOT, "%s,%.8g,%s", metric, value, unit));
        return this;
    }

    public Figures addAll(Figures others) {
        lines.addAll(others.lines);
        return this;
    }

    void write(Path file) throws IOException {
        List<String> all = new ArrayList<>(List.of("metric,value,unit"));
        all.addAll(lines);
        Files.createDirectories(file.toAbsolutePath().getParent());
        Files.write(file, all);
    }

    void print() {
        lines.forEach(System.out::println);
    }
}
