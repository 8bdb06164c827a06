package org.tallywright.daylog;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.tallywright.shared.HourClass;

/** What the checks say about rows on a job of a table, without a database. */
public final class DayVerdicts {
    private DayVerdicts() {}

    public static List<String> sentences(
            String date, String today, List<TypedRow> rows, Map<String, String> job, boolean onSite) {
        List<DayChecks.Line> lines = rows.stream()
                .map(row -> DayChecks.Line.of(row, place(row, job, onSite), true))
                .toList();
        DayChecks checks = new DayChecks(LocalDate.parse(date), LocalDate.parse(today), lines, List.of());
        List<String> all = new ArrayList<>();
        checks.objections.forEach(o -> all.add(o.sentence()));
        checks.questions.forEach(q -> all.add(q.sentence()));
        return all;
    }

    private static Place place(TypedRow row, Map<String, String> job, boolean onSite) {
        if (row.content() == null) {
            throw new IllegalArgumentException("no content");
        }
        return new Place(
                row.content().target(),
                UUID.nameUUIDFromBytes(job.get("job").getBytes(java.nio.charset.StandardCharsets.UTF_8)),
                job.get("job"),
                "Window seat",
                job.get("job_state"),
                job.get("task"),
                "Build",
                HourClass.DIRECT,
                onSite,
                LocalDate.parse(job.get("opened")),
                35,
                false);
    }
}
