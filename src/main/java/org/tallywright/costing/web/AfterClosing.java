package org.tallywright.costing.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.tallywright.costing.JobFigures;
import org.tallywright.costing.Reviews;

/**
 * What came after the closing, beside the frozen figures.
 *
 * @param cost labour and overhead of it
 * @param margin the frozen one less that cost
 */
record AfterClosing(List<Row> rows, String hours, String cost, String margin) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    record Row(String on, String person, String hourClass, String hours, String words) {}

    static AfterClosing of(List<Reviews.After> entries, JobFigures frozen) {
        int minutes = entries.stream().mapToInt(Reviews.After::minutes).sum();
        BigDecimal labour = entries.stream().map(Reviews.After::labour).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal overhead = frozen.overheadRate()
                .multiply(BigDecimal.valueOf(minutes))
                .divide(BigDecimal.valueOf(60), 2, RoundingMode.HALF_UP);
        BigDecimal cost = labour.add(overhead);
        Written write = new Written(frozen.money());
        return new AfterClosing(
                entries.stream().map(AfterClosing::row).toList(),
                Written.hours(minutes),
                write.money(cost),
                write.money(frozen.actual().margin().map(margin -> margin.subtract(cost))));
    }

    private static Row row(Reviews.After entry) {
        String words = entry.reason().isEmpty() ? entry.note() : entry.reason();
        return new Row(
                entry.on().format(DAY), entry.person(), entry.hourClass(), Written.hours(entry.minutes()), words);
    }
}
