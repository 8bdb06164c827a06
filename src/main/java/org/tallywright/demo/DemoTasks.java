package org.tallywright.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Tasks from the estimate's lines, their states from what was logged, the hours and the waits.
 *
 * <p>The scenario does not say which tasks of a running job are done. Here a task of an earlier stage with hours is
 * done; one of the current stage is done when it has nine tenths of its estimate, else started.
 */
final class DemoTasks {
    private final DemoLedger ledger;
    private final Map<String, Line> lines = new HashMap<>();

    private DemoTasks(DemoLedger ledger) {
        this.ledger = ledger;
    }

    /** One line of the estimate on its way to a task. */
    private static final class Line {
        final UUID id;
        final DemoRow row;
        final int estimatedMinutes;
        int loggedMinutes;

        @Nullable
        LocalDate first;

        @Nullable
        LocalDate last;

        @Nullable
        UUID lastBy;

        Line(UUID id, DemoRow row, int estimatedMinutes) {
            this.id = id;
            this.row = row;
            this.estimatedMinutes = estimatedMinutes;
        }

        void log(int minutes, LocalDate on, UUID by) {
            loggedMinutes += minutes;
            if (first == null || on.isBefore(first)) {
                first = on;
            }
            if (last == null || !on.isBefore(last)) {
                last = on;
                lastBy = by;
            }
        }
    }

    static void load(DemoLedger ledger) {
        DemoTasks tasks = new DemoTasks(ledger);
        tasks.readLines();
        List<Object[]> entries = tasks.entries();
        tasks.insertTasks();
        ledger.insert("""
                insert into time_entry (id, person_id, on_date, job_id, task_id, account, hour_class, minutes, note, reason,
                    logged_by, logged_at, version) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", entries);
        tasks.waits();
    }

    private void readLines() {
        for (DemoRow row : DemoFile.rows("estimate_lines")) {
            BigDecimal hours =
                    new BigDecimal(row.get("quantity")).multiply(new BigDecimal(row.get("unit_hours_at_bid")));
            int minutes = hours.multiply(BigDecimal.valueOf(60))
                    .setScale(0, RoundingMode.HALF_UP)
                    .intValueExact();
            String key = lineKey(row.get("job"), row.get("task_kind"), row.get("piece"), row.get("change_order"));
            lines.put(key, new Line(ledger.make("task/" + key), row, minutes));
        }
    }

    private static String lineKey(String job, String kind, String piece, String changeOrder) {
        return job + "/" + kind + "/" + piece + "/" + changeOrder;
    }

    /** The line an entry belongs to: the piece's own, else the job's, else the only one of that kind. */
    private @Nullable Line lineOf(DemoRow entry) {
        String job = entry.get("job");
        String kind = entry.get("task_kind");
        for (String piece : List.of(entry.get("piece"), "")) {
            for (String changeOrder : List.of("", "CO-1")) {
                Line line = lines.get(lineKey(job, kind, piece, changeOrder));
                if (line != null) {
                    return line;
                }
            }
        }
        return null;
    }

    private List<Object[]> entries() {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("time_entries")) {
            UUID person = ledger.id("person/" + row.get("person"));
            LocalDate on = ledger.date(row.get("day_offset"));
            int minutes = Integer.parseInt(row.get("minutes"));
            Line line = lineOf(row);
            if (line != null) {
                line.log(minutes, on, person);
            }
            boolean rework = row.get("hour_class").equals("rework");
            boolean onJob = !row.get("job").isEmpty();
            rows.add(new Object[] {
                ledger.make("entry/" + rows.size()),
                person,
                DemoLedger.day(on),
                onJob ? ledger.id("job/" + row.get("job")) : null,
                line == null ? null : line.id,
                onJob ? null : "maintenance",
                row.get("hour_class"),
                minutes,
                rework ? "" : row.get("note"),
                rework ? row.get("note") : "",
                person,
                DemoLedger.stamp(ledger.at(row.get("day_offset"), 1110))
            });
        }
        return rows;
    }

    private void insertTasks() {
        ledger.knowAll("kind/", "select id, code from task_kind");
        Map<String, BigDecimal> starting = new HashMap<>();
        Map<String, Object[]> kinds = new HashMap<>();
        ledger.jdbc().query("select code, name, unit, stage_id, unit_hours from task_kind", row -> {
            kinds.put(row.getString(1), new Object[] {row.getString(2), row.getString(3), row.getObject(4)});
            starting.put(row.getString(1), row.getBigDecimal(5));
        });
        Map<String, DemoRow> jobs = new HashMap<>();
        DemoFile.rows("jobs").forEach(job -> jobs.put(job.get("key"), job));
        List<String> stages = ledger.jdbc().queryForList("select name from stage order by position", String.class);
        List<Object[]> rows = DemoLedger.list();
        List<Object[]> events = DemoLedger.list();
        for (Line line : lines.values()) {
            DemoRow row = line.row;
            DemoRow job = jobs.getOrDefault(row.get("job"), DemoRow.NONE);
            Object[] kind = kinds.getOrDefault(row.get("task_kind"), new Object[3]);
            String state = state(line, job, stages);
            boolean done = state.equals("done");
            BigDecimal quantity = new BigDecimal(row.get("quantity"));
            UUID jobId = ledger.id("job/" + row.get("job"));
            LocalDate doneOn = !done
                    ? null
                    : line.last != null ? line.last : ledger.dateOrNull(job.getOrDefault("closed_offset", ""));
            rows.add(new Object[] {
                line.id,
                jobId,
                ledger.idOrNull("piece/" + row.get("job") + "/" + row.get("piece")),
                ledger.id("kind/" + row.get("task_kind")),
                kind[2],
                kind[0],
                quantity,
                kind[1],
                starting.get(row.get("task_kind")),
                new BigDecimal(row.get("unit_hours_at_bid")),
                line.estimatedMinutes,
                state,
                DemoLedger.day(line.first),
                DemoLedger.day(doneOn),
                done ? (line.lastBy != null ? line.lastBy : ledger.id("person/ada")) : null,
                done ? quantity : null,
                done,
                rows.size()
            });
            if (done) {
                events.add(new Object[] {
                    ledger.make("done/" + rows.size()), jobId, line.id, DemoLedger.day(doneOn), line.lastBy
                });
            }
        }
        ledger.insert("""
                insert into task (id, job_id, piece_id, task_kind_id, stage_id, name, quantity, unit, starting_unit_hours, unit_hours,
                    estimated_minutes, state, started_on, done_on, done_by, quantity_done, quantity_confirmed, position, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
        ledger.insert("""
                insert into job_event (id, job_id, task_id, kind, from_state, to_state, on_date, at, person_id)
                select v.id, v.job_id, v.task_id, 'task', 'started', 'done', v.on_date, v.on_date + time '17:00', v.person_id
                from (values (?::uuid, ?::uuid, ?::uuid, ?::date, ?::uuid)) as v (id, job_id, task_id, on_date, person_id)""", events);
    }

    private static String state(Line line, DemoRow job, List<String> stages) {
        if ("finished".equals(job.get("state"))) {
            return "done";
        }
        if (line.loggedMinutes == 0) {
            return "planned";
        }
        int now = stages.indexOf(job.get("stage"));
        int its = stages.indexOf(line.row.get("stage"));
        boolean done = its < now || line.loggedMinutes * 10 >= line.estimatedMinutes * 9;
        return done ? "done" : "started";
    }

    private void waits() {
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("waits")) {
            Line line = lineOf(row);
            if (line == null) {
                continue;
            }
            var started = ledger.at(row.get("started_offset"), Integer.parseInt(row.get("start_minute")));
            int minutes = Integer.parseInt(row.get("minutes"));
            rows.add(new Object[] {
                ledger.make("wait/" + rows.size()),
                ledger.id("job/" + row.get("job")),
                line.id,
                row.get("what"),
                DemoLedger.stamp(started),
                minutes,
                DemoLedger.stamp(started.plusSeconds(minutes * 60L)),
                ledger.id("person/ada")
            });
        }
        ledger.insert("""
                insert into wait (id, job_id, task_id, what, started_at, minutes, ends_at, started_by, version)
                values (?, ?, ?, ?, ?, ?, ?, ?, 0)""", rows);
    }
}
