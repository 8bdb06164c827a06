package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.tallywright.daylog.DayVerdicts;
import org.tallywright.daylog.Target;
import org.tallywright.shared.Ids;

/** Every wrong row of the log is caught by the check that should catch it, and by no other refusal. */
class FlawedEntriesTest {
    private static final String FILE = "/org/tallywright/daylog/flawed_time_entries.csv";

    private final Map<String, Target> tasks = new HashMap<>();

    @Test
    void catchesEveryRowByItsCheck() throws IOException {
        List<CSVRecord> rows = rows();
        assertThat(rows).hasSize(14);
        for (CSVRecord row : rows) {
            List<CSVRecord> day = rows.stream()
                    .filter(other -> other.get("date").equals(row.get("date"))
                            && other.get("person").equals(row.get("person")))
                    .filter(other -> !row.get("id").equals("F10") || other == row)
                    .filter(other -> !row.get("id").equals("F14") || other == row)
                    .toList();
            assertThat(sentences(day)).as(row.get("id")).anyMatch(s -> s.contains(row.get("expected")));
        }
    }

    @Test
    void asksNothingAboutAnOrdinaryDay() throws IOException {
        CSVRecord row = rows().get(9);
        RowForm work = form("task:" + Ids.next(), "direct", "2:45");
        assertThat(DayVerdicts.sentences(row.get("date"), row.get("today"), typed(work).rows, row.toMap(), false))
                .isEmpty();
    }

    private List<String> sentences(List<CSVRecord> day) {
        List<String> all = new ArrayList<>();
        List<RowForm> forms = new ArrayList<>();
        for (CSVRecord row : day) {
            Target task = tasks.computeIfAbsent(row.get("job") + row.get("task"), name -> Target.task(Ids.next()));
            forms.add(form(task.code(), row.get("class"), row.get("typed")));
        }
        DayTyped typed = new DayTyped(forms);
        typed.objections.forEach(o -> all.add(o.sentence()));
        CSVRecord first = day.get(0);
        all.addAll(DayVerdicts.sentences(
                first.get("date"),
                first.get("today"),
                typed.rows,
                first.toMap(),
                first.get("place").equals("site")));
        return all;
    }

    private static DayTyped typed(RowForm form) {
        return new DayTyped(List.of(form));
    }

    private static RowForm form(String what, String hourClass, String time) {
        return new RowForm(Ids.next(), null, what, hourClass, time, "", "", false);
    }

    private static List<CSVRecord> rows() throws IOException {
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(FlawedEntriesTest.class.getResourceAsStream(FILE)), StandardCharsets.UTF_8)) {
            return CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .setCommentMarker('#')
                    .get()
                    .parse(reader)
                    .getRecords();
        }
    }
}
