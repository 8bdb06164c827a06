package org.tallywright.bench.calibration;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.tallywright.calibration.engine.Observation;

/**
 * The rows of a benchmark file that can be used, in the order their actual hours became known.
 *
 * <p>Needed columns: est_hours and act_hours. A missing or empty quantity is 1, a missing worker is nobody, a missing kind or
 * job is one of its own. A date may be a day, an instant or a whole number of days; a row without done_date is known on its
 * other date, a file without any date takes one row for a day. Rows without an estimate or actual above 0 are left out.
 */
record PastTasks(List<PastTask> byKnown, int rows) {

    private static final LocalDate FIRST = LocalDate.of(2000, 1, 1);

    static PastTasks read(Path file) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .setTrim(true)
                .setIgnoreEmptyLines(true)
                .get();
        List<PastTask> tasks = new ArrayList<>();
        int rows = 0;
        try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
            for (CSVRecord row : parser) {
                rows++;
                PastTask task = task(row, rows);
                if (task.usable()) {
                    tasks.add(task);
                }
            }
        }
        tasks.sort(Comparator.comparing(PastTask::known));
        return new PastTasks(List.copyOf(tasks), rows);
    }

    private static PastTask task(CSVRecord row, int number) {
        LocalDate other = date(text(row, "date_or_order"), FIRST.plusDays(number));
        LocalDate known = date(text(row, "done_date"), other);
        LocalDate estimated = text(row, "date_or_order").isEmpty() ? known : other;
        double quantity = number(text(row, "quantity"), 1);
        return new PastTask(
                Integer.toString(number),
                estimated,
                orElse(text(row, "job"), "row " + number),
                orElse(text(row, "task_kind"), "any"),
                text(row, "worker"),
                quantity > 0 ? quantity : 1,
                number(text(row, "est_hours"), 0),
                number(text(row, "act_hours"), 0),
                known);
    }

    private static String text(CSVRecord row, String column) {
        return row.isMapped(column) && row.isSet(column) ? row.get(column) : "";
    }

    private static String orElse(String text, String otherwise) {
        return text.isEmpty() ? otherwise : text;
    }

    private static double number(String text, double otherwise) {
        try {
            return text.isEmpty() ? otherwise : Double.parseDouble(text);
        } catch (NumberFormatException notANumber) {
            return otherwise;
        }
    }

    private static LocalDate date(String text, LocalDate otherwise) {
        if (text.matches("-?\\d{1,6}(\\.0*)?")) {
            return FIRST.plusDays((long) Double.parseDouble(text));
        }
        try {
            return text.length() < 10 ? otherwise : LocalDate.parse(text.substring(0, 10));
        } catch (DateTimeParseException notADate) {
            return otherwise;
        }
    }

    /** How many finished tasks must be known before the first forecast: 100, or a third of a small file. */
    int burnIn() {
        return Math.min(100, byKnown.size() / 3);
    }

    /** What was known before a day. */
    List<Observation> knownBefore(LocalDate day) {
        int count = 0;
        while (count < byKnown.size() && byKnown.get(count).known().isBefore(day)) {
            count++;
        }
        return observations(byKnown.subList(0, count));
    }

    static List<Observation> observations(List<PastTask> tasks) {
        return tasks.stream().map(PastTask::observation).toList();
    }

    /** Tasks by job, jobs in the order of their first row, tasks in the order they became known. */
    Map<String, List<PastTask>> byJob() {
        Map<String, List<PastTask>> jobs = new LinkedHashMap<>();
        for (PastTask task : byKnown) {
            jobs.computeIfAbsent(task.job(), job -> new ArrayList<>()).add(task);
        }
        return jobs;
    }
}
