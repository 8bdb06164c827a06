package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts;
import org.tallywright.estimates.EstimateTasks;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;

/** A copy comes out again by one press, until something hangs on it. */
@AppTest
class CopyRemovalSqlTest {
    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleCosts costs;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    OptionDesk options;

    @Autowired
    PastJobs past;

    @Autowired
    CopyOffers offers;

    @Autowired
    Copyist copyist;

    @Autowired
    CopyRemoval removal;

    @Autowired
    TaskDesk tasks;

    @Autowired
    EstimateTasks lines;

    @Autowired
    JdbcClient jdbc;

    SamplePast.Built built;
    JobRef into;
    UUID by;

    @BeforeEach
    void buildOne() {
        built = sample.closed();
        sample.price(built.seat().oak(), "12.50");
        by = built.seat().owner().personId();
        into = jobs.lead(built.seat().owner(), "Seat for the library");
    }

    private CopyPlan plan() {
        CopyOffer offer = offers.offer(into, past.piece(built.piece()), false, Map.of(), Map.of());
        return sample.plan(offer, HoursChoice.Basis.TOOK);
    }

    private CopyPlan copied() {
        CopyPlan plan = plan();
        copyist.copy(into.id(), plan, by);
        return plan;
    }

    private int count(String table) {
        return jdbc.sql("select count(*) from " + table + " where job_id = ?")
                .param(into.id())
                .query(Integer.class)
                .single();
    }

    @Test
    void comesOutAgainWithEverythingByOnePress() {
        CopyPlan plan = copied();
        removal.takeOut(into.id(), plan.id(), by, true);
        removal.takeOut(into.id(), plan.id(), by, true);

        for (String table : List.of("task", "piece", "estimate_material", "past_copy", "past_copy_line")) {
            assertThat(count(table)).as(table).isZero();
        }
        assertThat(jdbc.sql("select count(*) from audit_entry where subject = 'task' and act = 'delete'")
                        .query(Integer.class)
                        .single())
                .isEqualTo(2);
    }

    @Test
    void staysOnceATaskWasBegun() {
        CopyPlan plan = copied();
        tasks.start(into.id(), plan.idOf(built.seat().rip()), by);

        assertStays(plan, "was begun");
        assertThat(count("task")).isEqualTo(2);
    }

    @Test
    void staysOnceSomethingIsLoggedOnIt() {
        CopyPlan plan = copied();
        costs.entry(into, plan.idOf(built.seat().glue()), built.seat().owner(), SampleCosts.LATER, "direct", 30, "");

        assertStays(plan, "hours");
        assertThat(count("task")).isEqualTo(2);
        assertThat(count("estimate_material")).isEqualTo(1);
    }

    @Test
    void staysWhereAnotherTaskIsOnItsPiece() {
        CopyPlan plan = copied();
        UUID fit = jobs.kind("fit_seat", "Fit the seat", "Fit", "each", "2");
        jobs.task(into, plan.idOf(built.piece()), fit, "1", built.seat().owner());

        assertStays(plan, "another task");
        assertThat(count("task")).isEqualTo(3);
        assertThat(count("piece")).isEqualTo(1);
    }

    @Test
    void staysWhileAnOptionHoldsATaskOrMaterialOfIt() {
        CopyPlan plan = copied();
        for (UUID line : List.of(plan.idOf(built.seat().rip()), material())) {
            UUID id = Ids.next();
            options.save(into.id(), new OptionDraft(id, null, "Oak seat", "As drawn.", "", Set.of(line)), by);

            assertStays(plan, "\"Oak seat\" holds lines of this copy");
            assertThat(count("estimate_option_line")).isEqualTo(1);
            options.remove(into.id(), id, by);
        }
        removal.takeOut(into.id(), plan.id(), by, true);
        assertThat(count("estimate_material")).isZero();
    }

    @Test
    void staysOnceABidHoldsIt() {
        CopyPlan plan = copied();
        estimates.issued(into, built.seat().owner());

        assertStays(plan, into.number() + " A holds lines of this copy");
        assertThat(count("task")).isEqualTo(2);
    }

    /** Of a copy without tasks; the travel in the bid is not of it. */
    @Test
    void staysOnceABidHoldsItsMaterialAlone() {
        CopyPlan all = plan();
        CopyPlan plan = new CopyPlan(
                all.id(), all.from(), all.fromPiece(), all.what(), all.pieces(), List.of(), all.materials(), List.of());
        copyist.copy(into.id(), plan, by);
        jobs.task(
                into,
                null,
                jobs.kind("travel", "Travel", "Install", "trip", "1"),
                "1",
                built.seat().owner());
        estimates.issued(into, built.seat().owner());

        assertStays(plan, into.number() + " A holds lines of this copy");
        assertThat(count("estimate_material")).isEqualTo(1);
    }

    /** What was added beside it, and a bid on that alone, does not stand in its way. */
    @Test
    void comesOutFromBesideABidOnOtherLines() {
        jobs.task(
                into,
                null,
                jobs.kind("travel", "Travel", "Install", "trip", "1"),
                "1",
                built.seat().owner());
        estimates.issued(into, built.seat().owner());
        CopyPlan plan = copied();

        removal.takeOut(into.id(), plan.id(), by, true);

        assertThat(count("task")).isEqualTo(1);
        assertThat(count("estimate_material")).isZero();
    }

    private void assertStays(CopyPlan plan, String why) {
        assertThatThrownBy(() -> removal.takeOut(into.id(), plan.id(), by, true))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(why);
        assertThat(count("past_copy_line"))
                .isEqualTo(plan.tasks().size()
                        + plan.pieces().size()
                        + plan.materials().size());
    }

    private UUID material() {
        return jdbc.sql("select id from estimate_material where job_id = ?")
                .param(into.id())
                .query(UUID.class)
                .single();
    }

    @Test
    void isNotTakenOutOfAnotherJob() {
        CopyPlan plan = copied();
        JobRef other = jobs.lead(built.seat().owner(), "Another");

        assertThatThrownBy(() -> removal.takeOut(other.id(), plan.id(), by, true))
                .isInstanceOf(NotHere.class);
        assertThat(count("task")).isEqualTo(2);
    }

    /** A changed quantity and a line left out by hand do not stand in its way. */
    @Test
    void comesOutChangedOrNot() {
        CopyPlan plan = copied();
        EstimateTasks.Line rip =
                lines.find(into.id(), plan.idOf(built.seat().rip())).orElseThrow();
        lines.save(
                into.id(),
                new EstimateTasks.Draft(
                        rip.id(),
                        rip.version(),
                        rip.details().taskKindId(),
                        rip.details().pieceId(),
                        Quantity.of(77),
                        null),
                by);
        lines.drop(into.id(), plan.idOf(built.seat().glue()), by);

        removal.takeOut(into.id(), plan.id(), by, true);

        assertThat(count("task")).isZero();
        assertThat(count("piece")).isZero();
    }
}
