package org.tallywright.daylog;

import java.sql.Timestamp;
import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.TestClock;
import org.tallywright.shared.Ids;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** Jobs with tasks to log on, and entries, put straight into the tables. */
@Component
public class SampleDays {
    /** The shop's date at {@link TestClock#START}, a Wednesday. */
    public static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private final JdbcClient jdbc;
    private final Trail trail;
    private final TransactionTemplate transaction;
    private int sequence;

    SampleDays(JdbcClient jdbc, Trail trail, TransactionTemplate transaction) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.transaction = transaction;
    }

    /** A job with one task for each name; a name that starts with "site:" is work at the client's. */
    public SampleJob job(String title, String... tasks) {
        return job(title, "running", TODAY.minusDays(60), tasks);
    }

    public SampleJob job(String title, String state, LocalDate opened, String... tasks) {
        UUID client = Ids.next();
        UUID site = Ids.next();
        UUID job = Ids.next();
        sequence++;
        String number = opened.getYear() % 100 + "-" + String.format("%03d", sequence);
        jdbc.sql("insert into client (id, name, version) values (?, 'Tessaly Quorn', 0)")
                .param(client)
                .update();
        jdbc.sql(
                        "insert into site (id, client_id, address, one_way_minutes, version) values (?, ?, '14 Plumbline Lane', 35, 0)")
                .params(site, client)
                .update();
        jdbc.sql("""
                        insert into job (id, year, sequence, number, client_id, site_id, title, state, opened_on, closed_on, version)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""")
                .params(
                        job,
                        opened.getYear(),
                        sequence,
                        number,
                        client,
                        site,
                        title,
                        state,
                        opened,
                        "closed".equals(state) ? opened.plusDays(30) : null)
                .update();
        Map<String, UUID> made = new LinkedHashMap<>();
        for (String task : tasks) {
            boolean atSite = task.startsWith("site:");
            String name = atSite ? task.substring(5) : task;
            made.put(name, task(job, name, atSite));
        }
        return new SampleJob(job, number, made);
    }

    private UUID task(UUID job, String name, boolean atSite) {
        UUID task = Ids.next();
        jdbc.sql("""
                        insert into task (id, job_id, task_kind_id, stage_id, name, quantity, unit, starting_unit_hours, unit_hours,
                            estimated_minutes, state, started_on, version)
                        values (?, ?, ?, ?, ?, 10, 'each', 0.5, 0.5, 300, 'started', ?, 0)""")
                .params(task, job, kind(name, atSite), stage(), name, TODAY.minusDays(3))
                .update();
        return task;
    }

    private UUID stage() {
        return jdbc.sql("select id from stage where name = 'Build'")
                .query(UUID.class)
                .optional()
                .orElseGet(() -> {
                    UUID id = Ids.next();
                    jdbc.sql("insert into stage (id, name, position, version) values (?, 'Build', 500, 0)")
                            .param(id)
                            .update();
                    return id;
                });
    }

    private UUID kind(String name, boolean atSite) {
        UUID id = Ids.next();
        String hourClass = name.toLowerCase(java.util.Locale.ROOT).startsWith("travel") ? "travel" : "direct";
        jdbc.sql("""
                        insert into task_kind (id, code, name, stage_id, unit, unit_hours, place, hour_class, version)
                        values (?, ?, ?, ?, 'each', 0.5, ?, ?, 0)""")
                .params(
                        id,
                        "k" + id.toString().replace("-", ""),
                        name.substring(0, Math.min(80, name.length())) + " " + id,
                        stage(),
                        atSite ? "site" : "shop",
                        hourClass)
                .update();
        return id;
    }

    public void plan(UUID task, LocalDate on, SignedIn person) {
        jdbc.sql("update task set planned_on = ?, assigned_to = ?, state = 'planned' where id = ?")
                .params(on, person.personId(), task)
                .update();
    }

    public void done(UUID task, LocalDate on, SignedIn person) {
        jdbc.sql("update task set state = 'done', done_on = ?, done_by = ? where id = ?")
                .params(on, person.personId(), task)
                .update();
    }

    public String state(UUID task) {
        return jdbc.sql("select state from task where id = ?")
                .param(task)
                .query(String.class)
                .single();
    }

    public UUID logged(SignedIn person, LocalDate date, SampleJob job, String task, int minutes) {
        UUID id = Ids.next();
        transaction.executeWithoutResult(status -> {
            trail.by(person.personId());
            jdbc.sql("""
                            insert into time_entry (id, person_id, on_date, job_id, task_id, hour_class, minutes, logged_by, logged_at, version)
                            values (?, ?, ?, ?, ?, 'direct', ?, ?, ?, 0)""")
                    .params(
                            id,
                            person.personId(),
                            date,
                            job.id(),
                            job.task(task),
                            minutes,
                            person.personId(),
                            Timestamp.from(TestClock.START))
                    .update();
        });
        return id;
    }

    public void curing(SampleJob job, String task, String what, Duration left) {
        jdbc.sql("""
                        insert into wait (id, job_id, task_id, what, started_at, minutes, ends_at, version)
                        values (?, ?, ?, ?, ?, 120, ?, 0)""")
                .params(
                        Ids.next(),
                        job.id(),
                        job.task(task),
                        what,
                        Timestamp.from(TestClock.START.minusSeconds(600)),
                        Timestamp.from(TestClock.START.plus(left)))
                .update();
    }

    /** All minutes of a day, read back with plain SQL. */
    public int minutes(SignedIn person, LocalDate date) {
        return jdbc.sql("select coalesce(sum(minutes), 0) from time_entry where person_id = ? and on_date = ?")
                .params(person.personId(), date)
                .query(Integer.class)
                .single();
    }

    public List<String> trailOf(UUID entry) {
        return jdbc.sql("select act from audit_entry where subject = 'time_entry' and subject_id = ? order by id")
                .param(entry.toString())
                .query(String.class)
                .list();
    }

    /** A job as made. */
    public record SampleJob(UUID id, String number, Map<String, UUID> tasks) {
        public UUID task(String name) {
            UUID id = tasks.get(name);
            if (id == null) {
                throw new IllegalArgumentException(name);
            }
            return id;
        }
    }
}
