package org.tallywright.costing;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.TestClock;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * A window seat whose every figure was worked out by hand. Sold for 1,200: 6 h 30 at 44, overhead 15 an hour, 50 bf of oak for
 * 520 with freight, delivery 40; planned cost 943.50. What became of it stands beside each row below.
 */
@Component
public class SampleCosts {
    public static final LocalDate EARLY = LocalDate.of(2026, 11, 5);
    public static final LocalDate LATER = LocalDate.of(2026, 11, 12);

    private final SampleJobs jobs;
    private final SamplePeople people;
    private final JdbcClient jdbc;
    private final Trail trail;
    private final TransactionTemplate transaction;

    SampleCosts(SampleJobs jobs, SamplePeople people, JdbcClient jdbc, Trail trail, TransactionTemplate transaction) {
        this.jobs = jobs;
        this.people = people;
        this.jdbc = jdbc;
        this.trail = trail;
        this.transaction = transaction;
    }

    /** The job and who is in it; the owner costs 50 an hour, 55 from 10 November; the helper 24; the lead has no wage. */
    public record Seat(
            JobRef job,
            SignedIn owner,
            SignedIn lead,
            SignedIn helper,
            UUID rip,
            UUID glue,
            UUID coat,
            UUID travel,
            UUID oak,
            UUID bid) {}

    /** Sold, nothing done yet. */
    public Seat sold() {
        SignedIn owner = people.owner();
        SignedIn lead = people.lead();
        SignedIn helper = people.person("Jonas Pell", Role.HELPER);
        people.paid(owner, LocalDate.of(2026, 1, 1), "40", "25");
        people.paid(owner, LocalDate.of(2026, 11, 10), "44", "25");
        people.paid(helper, LocalDate.of(2026, 1, 1), "20", "20");
        JobRef job = jobs.running(owner, "Window seat, north bay");
        UUID piece = jobs.piece(job, "Window seat", "61 3/8", "18", "15", owner);
        UUID rip =
                jobs.task(job, piece, jobs.kind("rip_hardwood", "Rip hardwood", "Mill", "lf", "0.015"), "100", owner);
        UUID glue = jobs.task(job, piece, jobs.kind("glue_panel", "Glue up panel", "Build", "panel", "1"), "3", owner);
        UUID coat = jobs.task(
                job, piece, jobs.kind("clear_coat", "Brush clear coat", "Finish", "csf", "0.02"), "100", owner);
        UUID travel = jobs.task(job, null, jobs.kind("travel", "Travel", "Install", "trip", "1"), "1", owner);
        UUID oak = material("red_oak", "Red oak, 5/4", "hardwood", "bf");
        UUID bid = inTrail(owner, () -> bid(job, owner, oak, rip, glue, coat));
        return new Seat(job, owner, lead, helper, rip, glue, coat, travel, oak, bid);
    }

    /** Sold and worked on; still running, and ready to be closed. */
    public Seat worked() {
        Seat seat = sold();
        hours(seat);
        done(seat.rip(), "120", EARLY);
        done(seat.glue(), "3", LATER);
        jdbc.sql("update task set state = 'dropped', never_needed = true where id = ?")
                .param(seat.coat())
                .update();
        inTrail(seat.owner(), () -> bought(seat));
        return seat;
    }

    private void done(UUID task, String quantity, LocalDate on) {
        jdbc.sql(
                        "update task set state = 'done', done_on = ?, quantity_done = ?, quantity_confirmed = true where id = ?")
                .params(on, new BigDecimal(quantity), task)
                .update();
    }

    private void hours(Seat seat) {
        SignedIn owner = seat.owner();
        // 100.00: 2 h at 50.
        entry(seat.job(), seat.rip(), owner, EARLY, "direct", 120, "");
        // 60.00: 2 h 30 at 24; and 27.50: half an hour at 55.
        entry(seat.job(), seat.glue(), seat.helper(), LATER, "direct", 150, "");
        entry(seat.job(), seat.glue(), owner, LATER, "rework", 30, "Panel came out of the clamps twisted");
        // On no estimate line: 55.00, 18.00, and 20 minutes that nobody can price.
        entry(seat.job(), seat.travel(), owner, LATER, "travel", 60, "");
        entry(seat.job(), null, seat.helper(), LATER, "supply run", 45, "");
        entry(seat.job(), null, seat.lead(), LATER, "office", 20, "");
    }

    /** Logged now, for any day. */
    public UUID entry(
            JobRef job,
            @Nullable UUID task,
            SignedIn person,
            LocalDate on,
            String hourClass,
            int minutes,
            String reason) {
        return entry(job, task, person, on, hourClass, minutes, reason, TestClock.START);
    }

    public UUID entry(
            JobRef job,
            @Nullable UUID task,
            SignedIn person,
            LocalDate on,
            String hourClass,
            int minutes,
            String reason,
            Instant at) {
        UUID id = Ids.next();
        return inTrail(person, () -> {
            jdbc.sql("""
                            insert into time_entry (id, person_id, on_date, job_id, task_id, hour_class, minutes, reason, logged_by,
                                logged_at, version) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""")
                    .params(
                            id,
                            person.personId(),
                            on,
                            job.id(),
                            task,
                            hourClass,
                            minutes,
                            reason,
                            person.personId(),
                            Timestamp.from(at))
                    .update();
            return id;
        });
    }

    /** Charged 50 bf of oak for 601.00, of which 33 bf are in the work; screws for 5.00 from stock; delivery 42.00. */
    private UUID bought(Seat seat) {
        UUID job = seat.job().id();
        UUID by = seat.owner().personId();
        purchase(job, seat.oak(), "56", "11.00", "25.00", "641.00", by);
        jdbc.sql("""
                        insert into material_use (id, job_id, material_id, quantity, net_quantity, source, used_on, version)
                        values (?, ?, ?, 52, 33, 'job', ?, 0)""").params(Ids.next(), job, seat.oak(), LATER).update();
        jdbc.sql("""
                        insert into material_return (id, job_id, material_id, quantity, credit_amount, returned_on, version)
                        values (?, ?, ?, 2, 20, ?, 0)""").params(Ids.next(), job, seat.oak(), LATER).update();
        jdbc.sql("""
                        insert into offcut (id, job_id, material_id, quantity, credit_amount, kept_on, version)
                        values (?, ?, ?, 4, 20, ?, 0)""").params(Ids.next(), job, seat.oak(), LATER).update();
        UUID screws = material("screws", "Screws", "fixings", "each");
        jdbc.sql("""
                        insert into material_use (id, job_id, material_id, quantity, source, unit_price, used_on, version)
                        values (?, ?, ?, 100, 'stock', 0.05, ?, 0)""").params(Ids.next(), job, screws, LATER).update();
        return purchase(job, material("delivery", "Delivery", "other", "each"), "1", "42.00", "0", "42.00", by);
    }

    private UUID purchase(
            UUID job, UUID material, String quantity, String price, String freight, String amount, UUID by) {
        UUID id = Ids.next();
        jdbc.sql("""
                        insert into purchase (id, job_id, material_id, quantity, unit_price, freight_amount, amount, bought_on, bought_by,
                            version) values (?, ?, ?, ?, ?, ?, ?, ?, ?, 0)""")
                .params(
                        id,
                        job,
                        material,
                        new BigDecimal(quantity),
                        new BigDecimal(price),
                        new BigDecimal(freight),
                        new BigDecimal(amount),
                        EARLY,
                        by)
                .update();
        return id;
    }

    public UUID material(String code, String name, String group, String unit) {
        UUID id = Ids.next();
        jdbc.sql("insert into material (id, code, name, material_group, unit, starting_yield, version)"
                        + " values (?, ?, ?, ?, ?, 0.6, 0)")
                .params(id, code, name, group, unit)
                .update();
        return id;
    }

    private UUID bid(JobRef job, SignedIn owner, UUID oak, UUID... sold) {
        UUID bid = Ids.next();
        jdbc.sql("""
                        insert into bid (id, job_id, kind, mark, number, state, issued_at, issued_on, issued_by, valid_until,
                            estimated_minutes, labour_rate, overhead_rate, labour_amount, material_amount, other_amount, overhead_amount,
                            contingency_amount, margin_amount, rounding_amount, price_amount, total_amount, contingency_percent,
                            margin_percent, document, accepted_at, accepted_on, accepted_name, accepted_via, version)
                        values (?, ?, 'bid', 'A', ?, 'accepted', ?, '2026-10-01', ?, '2026-11-01',
                            390, 44, 15, 286, 520, 40, 97.50, 0, 256.50, 0, 1200, 1200, 0, 15, '{}', ?, '2026-10-05', 'Orrin', 'owner', 0)""")
                .params(
                        bid,
                        job.id(),
                        job.number() + " A",
                        Timestamp.from(TestClock.START),
                        owner.personId(),
                        Timestamp.from(TestClock.START))
                .update();
        for (UUID task : sold) {
            jdbc.sql("""
                            insert into bid_task (bid_id, position, job_id, task_id, piece_name, stage_name, name, quantity, unit,
                                starting_unit_hours, unit_hours, estimated_minutes)
                            select ?, t.position, t.job_id, t.id, '', 'Mill', t.name, t.quantity, t.unit, t.starting_unit_hours,
                                t.unit_hours, t.estimated_minutes from task t where t.id = ?""").params(bid, task).update();
        }
        jdbc.sql("""
                        insert into bid_material (bid_id, position, material_id, name, unit, net_quantity, yield, purchase_quantity,
                            unit_price, freight_amount, amount) values (?, 1, ?, 'Red oak, 5/4', 'bf', 30, 0.6, 50, 10, 20, 520)""").params(bid, oak).update();
        jdbc.sql("insert into bid_other (bid_id, position, description, amount) values (?, 1, 'Delivery', 40)")
                .param(bid)
                .update();
        return bid;
    }

    public <T> T inTrail(SignedIn by, Supplier<T> write) {
        return Objects.requireNonNull(transaction.execute(status -> {
            trail.by(by.personId());
            return write.get();
        }));
    }
}
