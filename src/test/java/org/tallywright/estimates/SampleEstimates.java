package org.tallywright.estimates;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.web.SignedIn;

/** A window seat being bid, with figures that are easy to find on a page where they must not be. */
@Component
public class SampleEstimates {
    /** 41.17 an hour and a burden of 20 %: 49.40 burdened. */
    public static final String WAGE = "41.17";

    private final EstimateLines desk;
    private final EstimatePricer pricer;
    private final BidDesk bids;
    private final SampleJobs jobs;
    private final SamplePeople people;
    private final JdbcClient jdbc;

    SampleEstimates(
            EstimateLines desk,
            EstimatePricer pricer,
            BidDesk bids,
            SampleJobs jobs,
            SamplePeople people,
            JdbcClient jdbc) {
        this.desk = desk;
        this.pricer = pricer;
        this.bids = bids;
        this.jobs = jobs;
        this.people = people;
        this.jdbc = jdbc;
    }

    /** A paid owner's lead with a piece, tasks of 6 h 30, white oak for 603.00 and delivery for 45.50. */
    public JobRef windowSeat(SignedIn owner) {
        people.paid(owner, LocalDate.of(2026, 1, 1), WAGE, "20");
        JobRef job = jobs.lead(owner, "Window seat, north bay");
        UUID piece = jobs.piece(job, "Window seat", "61 3/8", "18", "15", owner);
        jobs.task(job, piece, jobs.kind("rip_hardwood", "Rip hardwood", "Mill", "lf", "0.015"), "100", owner);
        jobs.task(job, piece, jobs.kind("glue_panel", "Glue up panel", "Build", "panel", "1"), "3", owner);
        jobs.task(job, null, jobs.kind("travel", "Travel", "Install", "trip", "1"), "2", owner);
        material(job, piece, whiteOak(), "27", owner);
        other(job, "Delivery", "45.50", owner);
        return job;
    }

    /** A board foot at 13.40 since January, half of what is bought ends up in the work. */
    public UUID whiteOak() {
        return material("white_oak", "White oak, rough", "bf", "0.60", "13.40");
    }

    public UUID material(String code, String name, String unit, String yield, String price) {
        UUID id = Ids.next();
        jdbc.sql("insert into material (id, code, name, material_group, unit, starting_yield, version)"
                        + " values (?, ?, ?, 'hardwood', ?, ?, 0)")
                .params(id, code, name, unit, new BigDecimal(yield))
                .update();
        people.asShop(() -> jdbc.sql(
                        "insert into material_price (material_id, from_date, unit_price) values (?, date '2026-01-05', ?)")
                .params(id, new BigDecimal(price))
                .update());
        return id;
    }

    public UUID material(JobRef job, @Nullable UUID piece, UUID material, String net, SignedIn by) {
        UUID id = Ids.next();
        desk.save(
                job.id(),
                new MaterialDraft(id, null, piece, material, NetQuantity.of(net), null, null, Money.ZERO),
                by.personId());
        return id;
    }

    public UUID other(JobRef job, String description, String amount, SignedIn by) {
        UUID id = Ids.next();
        desk.save(job.id(), new OtherDraft(id, null, CostSort.OTHER, description, Money.of(amount)), by.personId());
        return id;
    }

    /** Issues what the working sum holds now. */
    public UUID issued(JobRef job, SignedIn owner) {
        UUID id = Ids.next();
        bids.issue(job.id(), said(id, job, "Window seat in white oak"), owner.personId());
        return id;
    }

    public IssueBid said(UUID id, JobRef job, String title) {
        WorkingSum working = pricer.of(job.id());
        Money total = working.everything();
        BidWords words =
                new BidWords("Build and install one window seat.\nOil finish.", "Painting", "", "Half to book.");
        return new IssueBid(id, working.version(), title, words, 30, 0, total);
    }

    public List<UUID> bidsOf(JobRef job) {
        return jdbc.sql("select id from bid where job_id = ? order by issued_at, id")
                .param(job.id())
                .query(UUID.class)
                .list();
    }
}
