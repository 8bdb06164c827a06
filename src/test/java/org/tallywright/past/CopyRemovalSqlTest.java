package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts;
import org.tallywright.estimates.EstimateTasks;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.jobs.TaskDesk;
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

    private CopyPlan copied() {
        CopyOffer offer = offers.offer(into, past.piece(built.piece()), false, Map.of(), Map.of());
        CopyPlan plan = sample.plan(offer, HoursChoice.Basis.TOOK);
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
    void staysOnceSomethingIsLoggedOnIt() {
        CopyPlan plan = copied();
        UUID rip = plan.idOf(built.seat().rip());
        tasks.start(into.id(), rip, by);

        assertThatThrownBy(() -> removal.takeOut(into.id(), plan.id(), by, true))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("was begun");
        assertThat(count("task")).isEqualTo(2);
    }

    @Test
    void staysWhereHoursOrAnotherTaskReferToIt() {
        CopyPlan plan = copied();
        costs.entry(into, plan.idOf(built.seat().glue()), built.seat().owner(), SampleCosts.LATER, "direct", 30, "");

        assertThatThrownBy(() -> removal.takeOut(into.id(), plan.id(), by, true))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("hours");
        assertThat(count("estimate_material")).isEqualTo(1);
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
