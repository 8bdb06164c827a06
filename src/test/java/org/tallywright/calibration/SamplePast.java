package org.tallywright.calibration;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.LocalDate;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.TestClock;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.shared.Ids;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** Finished jobs for tests: each has one task of two kinds, sanding at 0.1 h/sf and fitting at 1 h a panel. */
@Component
public class SamplePast {
    public static final LocalDate FIRST = LocalDate.of(2026, 3, 2);

    private final SampleJobs jobs;
    private final JdbcClient jdbc;
    private final Trail trail;
    private final TransactionTemplate transaction;
    private final Recalibration recalibration;
    private final HeldWork held;

    SamplePast(
            SampleJobs jobs,
            JdbcClient jdbc,
            Trail trail,
            TransactionTemplate transaction,
            Recalibration recalibration,
            HeldWork held) {
        this.jobs = jobs;
        this.jdbc = jdbc;
        this.trail = trail;
        this.transaction = transaction;
        this.recalibration = recalibration;
        this.held = held;
    }

    public UUID sanding() {
        return jobs.kind("sand", "Sand to 150", "Finish", "sf", "0.1");
    }

    public UUID fitting() {
        return jobs.kind("fit_panel", "Fit a panel", "Build", "panel", "1");
    }

    /** The same work as {@link #sanding} under another name, at 0.2 h/sf. */
    public UUID handSanding() {
        return jobs.kind("hand_sand", "Sand by hand", "Finish", "sf", "0.2");
    }

    /** One of many that nobody did yet. */
    public void kind(int number) {
        jobs.kind("kind_" + number, "Kind " + number, "Build", "each", "1");
    }

    /** One finished task of that, on a job of its own. */
    public JobRef handSandingJob(SignedIn by, LocalDate closed, String quantity, int minutes) {
        JobRef job = jobs.running(by, "Bench of " + closed);
        work(job, jobs.task(job, null, handSanding(), quantity, by), minutes, closed, "1", by);
        close(job, closed);
        return job;
    }

    /** So many jobs a month apart, each taking that many times its estimate on every task. */
    public void jobs(SignedIn by, int count, String times) {
        for (int n = 0; n < count; n++) {
            job(by, FIRST.plusMonths(n), times);
        }
        calibrated();
    }

    /** Estimated 4 h of sanding and 3 h of fitting; half an hour of rework besides. */
    public JobRef job(SignedIn by, LocalDate closed, String times) {
        JobRef job = jobs.running(by, "Bookcase of " + closed);
        work(job, jobs.task(job, null, sanding(), "40", by), 240, closed, times, by);
        work(job, jobs.task(job, null, fitting(), "3", by), 180, closed, times, by);
        logged(job, null, "rework", 30, closed, by);
        close(job, closed);
        return job;
    }

    private void close(JobRef job, LocalDate closed) {
        jdbc.sql("update job set state = 'closed', closed_on = ?, accepted_on = ? where id = ?")
                .params(closed, closed.minusDays(10), job.id())
                .update();
    }

    private void work(JobRef job, UUID task, int estimated, LocalDate on, String times, SignedIn by) {
        int minutes =
                new BigDecimal(times).multiply(BigDecimal.valueOf(estimated)).intValue();
        logged(job, task, "direct", minutes, on.minusDays(1), by);
        jdbc.sql("update task set state = 'done', done_on = ? where id = ?")
                .params(on.minusDays(1), task)
                .update();
    }

    public void logged(
            JobRef job,
            @org.jspecify.annotations.Nullable UUID task,
            String hourClass,
            int minutes,
            LocalDate on,
            SignedIn by) {
        transaction.executeWithoutResult(status -> {
            trail.by(by.personId());
            jdbc.sql("""
                            insert into time_entry (id, person_id, on_date, job_id, task_id, hour_class, minutes, reason, logged_by,
                                logged_at, version) values (?, ?, ?, ?, ?, ?, ?, 'door rail', ?, ?, 0)""")
                    .params(
                            Ids.next(),
                            by.personId(),
                            on,
                            job.id(),
                            task,
                            hourClass,
                            minutes,
                            by.personId(),
                            Timestamp.from(TestClock.START))
                    .update();
        });
    }

    public void calibrated() {
        recalibration.ask("asked by a test");
        held.run();
    }
}
