package org.tallywright.jobs;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Units;
import org.tallywright.web.SignedIn;

/**
 * Jobs for tests, made through the desks: {@code JobRef job = jobs.windowSeat(ada);}. Clients, sites, stages and task
 * kinds are written straight into their tables, so that no other module is needed.
 */
@Component
public class SampleJobs {
    private final JobDesk desk;
    private final TaskDesk tasks;
    private final PieceDesk pieces;
    private final JdbcClient jdbc;

    SampleJobs(JobDesk desk, TaskDesk tasks, PieceDesk pieces, JdbcClient jdbc) {
        this.desk = desk;
        this.tasks = tasks;
        this.pieces = pieces;
        this.jdbc = jdbc;
    }

    /** A lead without pieces or tasks. */
    public JobRef lead(SignedIn by, String title) {
        UUID client = client("Orrin Baskwell");
        UUID site = site(client, "9 Harrow Lane");
        return desk.open(Ids.next(), new JobDetails(client, site, title, null, ""), by.personId());
    }

    /** A running job without pieces or tasks. */
    public JobRef running(SignedIn by, String title) {
        JobRef job = lead(by, title);
        desk.award(job.id(), LocalDate.of(2026, 11, 20), by.personId(), "");
        return desk.get(job.id());
    }

    /** A running window seat: one piece, three tasks in Mill, Build and Finish, estimated 6 h 30. */
    public JobRef windowSeat(SignedIn by) {
        JobRef job = running(by, "Window seat, north bay");
        UUID piece = piece(job, "Window seat", "61 3/8", "18", "15", by);
        task(job, piece, kind("rip_hardwood", "Rip hardwood", "Mill", "lf", "0.015"), "100", by);
        task(job, piece, kind("glue_panel", "Glue up panel", "Build", "panel", "1"), "3", by);
        task(job, piece, kind("clear_coat", "Brush clear coat", "Finish", "csf", "0.02"), "100", by);
        return job;
    }

    public UUID client(String name) {
        UUID id = Ids.next();
        jdbc.sql("insert into client (id, name, version) values (?, ?, 0)")
                .params(id, name)
                .update();
        return id;
    }

    public UUID site(UUID client, String address) {
        UUID id = Ids.next();
        jdbc.sql("insert into site (id, client_id, address, version) values (?, ?, ?, 0)")
                .params(id, client, address)
                .update();
        return id;
    }

    public UUID piece(JobRef job, String name, String width, String height, String depth, SignedIn by) {
        PieceDetails details = new PieceDetails(null, name, inches(width), inches(height), inches(depth), 1, "");
        return pieces.save(job.id(), Ids.next(), null, details, by.personId()).id();
    }

    private static Length inches(String typed) {
        return Length.parse(typed, Units.IMPERIAL);
    }

    public UUID task(JobRef job, @Nullable UUID piece, UUID kind, String quantity, SignedIn by) {
        TaskDetails details = TaskDetails.proposed(kind, piece, Quantity.of(quantity));
        return tasks.save(job.id(), Ids.next(), null, details, by.personId()).id();
    }

    /** The task kind of that code, made when it is not there. */
    public UUID kind(String code, String name, String stage, String unit, String unitHours) {
        return jdbc.sql("select id from task_kind where code = ?")
                .param(code)
                .query(UUID.class)
                .optional()
                .orElseGet(() -> newKind(code, name, stage, unit, unitHours));
    }

    private UUID newKind(String code, String name, String stage, String unit, String unitHours) {
        UUID id = Ids.next();
        jdbc.sql("""
                        insert into task_kind (id, code, name, stage_id, unit, unit_hours, version)
                        values (?, ?, ?, ?, ?, ?, 0)""")
                .params(id, code, name, stage(stage), unit, new BigDecimal(unitHours))
                .update();
        return id;
    }

    /** Passive time after a kind, such as a glue cure. */
    public void wait(UUID kind, int position, String what, int minutes) {
        jdbc.sql("insert into task_kind_wait (id, task_kind_id, position, what, minutes) values (?, ?, ?, ?, ?)")
                .params(Ids.next(), kind, position, what, minutes)
                .update();
    }

    /** One kind is done before another. */
    public void before(UUID kind, UUID first) {
        jdbc.sql("insert into task_kind_before (task_kind_id, before_kind_id) values (?, ?)")
                .params(kind, first)
                .update();
    }

    /** The stage of that name, made after the others when it is not there. */
    public UUID stage(String name) {
        return jdbc.sql("select id from stage where lower(name) = lower(?)")
                .param(name)
                .query(UUID.class)
                .optional()
                .orElseGet(() -> {
                    UUID id = Ids.next();
                    jdbc.sql("insert into stage (id, name, position, version)"
                                    + " select ?, ?, coalesce(max(position), 0) + 1, 0 from stage")
                            .params(id, name)
                            .update();
                    return id;
                });
    }
}
