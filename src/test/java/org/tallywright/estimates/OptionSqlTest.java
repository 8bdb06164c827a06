package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** A window seat with two options: brass hooks, and a drawer that is work too. */
@AppTest
class OptionSqlTest {
    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates sample;

    @Autowired
    OptionDesk options;

    @Autowired
    EstimatePricer pricer;

    @Autowired
    BidDesk desk;

    @Autowired
    Bids bids;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Trail trail;

    @Autowired
    TestClock clock;

    SignedIn ada;
    JobRef job;
    UUID hooks;
    UUID drawer;
    UUID drawerTask;

    @BeforeEach
    void bidWithOptions() {
        ada = people.owner();
        job = sample.windowSeat(ada);
        hooks = option("Brass hooks", sample.other(job, "Six hooks", "80.00", ada));
        drawerTask = jobs.task(job, null, jobs.kind("drawer", "Build a drawer", "Build", "each", "3"), "1", ada);
        drawer = option("Drawer", drawerTask, sample.other(job, "Slides", "35.00", ada));
    }

    private UUID option(String name, UUID... lines) {
        UUID id = Ids.next();
        options.save(job.id(), new OptionDraft(id, null, name, "As drawn.", "", Set.of(lines)), ada.personId());
        return id;
    }

    @Test
    void pricesEachByTheOneFormulaAndLeavesTheBidItselfAsItWas() {
        WorkingSum working = pricer.of(job.id());

        assertThat(working.sum().orElseThrow().price()).isEqualTo(Money.of("1260.00"));
        // 80 / 0.85 = 94.12, to the nearest 10; (3 h x 49.40 + 35 + 3 x 15) / 0.85 = 268.47
        assertThat(working.options())
                .extracting(
                        o -> o.option().name(),
                        o -> o.working().sum().orElseThrow().price())
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("Brass hooks", Money.of("90.00")),
                        org.assertj.core.groups.Tuple.tuple("Drawer", Money.of("270.00")));
        assertThat(working.everything()).isEqualTo(Money.of("1620.00"));
    }

    /** What the price does not hold is not among its pieces; a piece without any line of its own is built for the price. */
    @Test
    void namesAPieceThatIsBuiltForItAloneAndLeavesItOutOfTheBid() {
        UUID second = jobs.piece(job, "Second bookcase", "36", "84", "12", ada);
        jobs.piece(job, "Filler", "3", "84", "1", ada);
        UUID build = jobs.task(job, second, jobs.kind("case", "Assemble a case", "Build", "each", "2.5"), "1", ada);
        option("Second bookcase", build);

        BidDocument document = bids.paper(sample.issued(job, ada)).document();

        assertThat(document.pieces())
                .extracting(BidDocument.PieceRow::name)
                .contains("Filler")
                .doesNotContain("Second bookcase");
        assertThat(document.options().get(2).words())
                .containsExactly("Second bookcase: 3' wide, 7' high, 1' deep", "As drawn.");
        assertThat(document.options().get(1).words()).containsExactly("As drawn.");
    }

    @Test
    void isPricedLikeABidOfItsOwnLinesToTheCent() {
        PriceSum alone = pricer.of(job.id()).options().get(1).working().sum().orElseThrow();
        JobRef other = jobs.lead(ada, "Drawer alone");
        jobs.task(other, null, jobs.kind("drawer2", "Build a drawer, again", "Build", "each", "3"), "1", ada);
        sample.other(other, "Slides", "35.00", ada);

        assertThat(pricer.of(other.id()).sum().orElseThrow()).isEqualTo(alone);
    }

    @Test
    void becomesTheBudgetOnceTaken() {
        UUID bid = sample.issued(job, ada);
        List<BidPaper.Option> offered = bids.paper(bid).options();
        assertThat(offered).extracting(BidPaper.Option::name).containsExactly("Brass hooks", "Drawer");
        UUID drawerOnPaper = offered.get(1).id();

        bids.acceptByLink(bid, job.id(), new ClientYes("Orrin", Set.of(drawerOnPaper), "203.0.113.7"));
        bids.acceptByLink(bid, job.id(), new ClientYes("Orrin", Set.of(drawerOnPaper), "203.0.113.7"));
        assertThatThrownBy(() -> bids.acceptByLink(bid, job.id(), new ClientYes("Orrin", Set.of(), "203.0.113.7")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("with other options");

        BidPaper paper = bids.paper(bid);
        assertThat(paper.chose(drawerOnPaper)).isTrue();
        assertThat(paper.agreed()).isEqualTo(Money.of("1530.00"));
        assertThat(bids.accepted(job.id()))
                .extracting(AcceptedBid::number)
                .containsExactly(job.number() + " A", job.number() + " A.2");
        assertThat(bids.mark(job.id()).orElseThrow().price()).isEqualTo(Money.of("1530.00"));
        assertThat(jdbc.sql("select price_amount from costing_job where job_id = ?")
                        .param(job.id())
                        .query(java.math.BigDecimal.class)
                        .single())
                .isEqualByComparingTo("1530.00");
        // 3 h of the drawer among the bid's hours of each task.
        assertThat(jdbc.sql("select bid_minutes from costing_task where task_id = ?")
                        .param(drawerTask)
                        .query(Integer.class)
                        .single())
                .isEqualTo(180);
        assertThat(pricer.optionsOf(job.id()))
                .extracting(OptionRow::name, OptionRow::fate)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("Brass hooks", "declined"),
                        org.assertj.core.groups.Tuple.tuple("Drawer", "chosen"));
        assertThat(pricer.of(job.id()).sheet().next().isEmpty()).isTrue();
        assertThat(pricer.of(job.id()).options()).isEmpty();
    }

    @Test
    void aLineThatCameToAnOptionAfterwardsIsOfferedNext() {
        UUID bid = sample.issued(job, ada);
        UUID drawerOnPaper = bids.paper(bid).options().get(1).id();
        UUID late = sample.other(job, "Soft closer", "12.00", ada);
        options.save(
                job.id(),
                new OptionDraft(drawer, 0, "Drawer", "As drawn.", "", Set.of(drawerTask, late)),
                ada.personId());

        bids.acceptByLink(bid, job.id(), new ClientYes("Orrin", Set.of(drawerOnPaper), ""));

        assertThat(pricer.of(job.id()).sheet().next().others())
                .extracting(EstimateSheet.OtherRow::description)
                .contains("Soft closer");
    }

    @Test
    void dropsTheWorkOfWhatIsNotTaken() {
        bids.acceptByLink(sample.issued(job, ada), job.id(), new ClientYes("Orrin", Set.of(), ""));

        assertThat(jdbc.sql("select state from task where id = ?")
                        .param(drawerTask)
                        .query(String.class)
                        .single())
                .isEqualTo("dropped");
        assertThat(jdbc.sql("select note from job_event where task_id = ? and to_state = 'never needed'")
                        .param(drawerTask)
                        .query(String.class)
                        .list())
                .containsExactly(job.number() + " A.2 was not taken");
        assertThat(bids.mark(job.id()).orElseThrow().price()).isEqualTo(Money.of("1260.00"));
    }

    @Test
    void refusesOptionsOfAnotherBidAndAnswersToAnOptionAlone() {
        UUID first = sample.issued(job, ada);
        clock.advance(Duration.ofMinutes(5));
        UUID second = sample.issued(job, ada);
        UUID old = bids.paper(first).options().get(0).id();

        assertThatThrownBy(() -> bids.acceptByLink(second, job.id(), new ClientYes("Orrin", Set.of(old), "")))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> bids.acceptByLink(old, job.id(), new ClientYes("Orrin", Set.of(), "")))
                .isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> bids.paper(old)).isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> desk.withdraw(old, ada.personId())).isInstanceOf(NotHere.class);
        assertThat(bids.paper(second).standing()).isEqualTo(BidStanding.OPEN);
    }

    @Test
    void goesWithItsBidWhenThatIsDeclinedOrWithdrawn() {
        UUID first = sample.issued(job, ada);
        bids.declineByLink(first, job.id(), new Refusal("price", ""), "");
        clock.advance(Duration.ofMinutes(5));
        UUID second = sample.issued(job, ada);
        desk.withdraw(second, ada.personId());

        assertThat(jdbc.sql("select state from bid where kind = 'option' order by issued_at, number")
                        .query(String.class)
                        .list())
                .containsExactly("declined", "declined", "withdrawn", "withdrawn");
        assertThat(pricer.of(job.id()).options()).hasSize(2);
    }

    @Test
    void movesALineRatherThanSellingItTwice() {
        UUID both = option("Both", drawerTask);

        assertThat(pricer.sheet(job.id()).option(both).tasks()).hasSize(1);
        assertThat(pricer.sheet(job.id()).option(drawer).tasks()).isEmpty();
        options.remove(job.id(), both, ada.personId());
        assertThat(pricer.sheet(job.id()).next().tasks())
                .extracting(EstimateSheet.TaskRow::name)
                .contains("Build a drawer");
    }

    @Test
    void showsBothVersionsInsteadOfOverwriting() {
        OptionRow read = options.find(job.id(), hooks).orElseThrow();
        options.save(job.id(), new OptionDraft(hooks, read.version(), "Iron hooks", "", "", Set.of()), ada.personId());

        assertThatThrownBy(() -> options.save(
                        job.id(),
                        new OptionDraft(hooks, read.version(), "Steel hooks", "", "", Set.of()),
                        ada.personId()))
                .isInstanceOf(Stale.class);
        JobRef other = jobs.lead(ada, "Pantry");
        assertThatThrownBy(() ->
                        options.save(other.id(), new OptionDraft(hooks, 0, "Hooks", "", "", Set.of()), ada.personId()))
                .isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> option("Strange", Ids.next())).isInstanceOf(Refused.class);
    }

    @Test
    void isDecidedOnce() {
        bids.acceptByLink(sample.issued(job, ada), job.id(), new ClientYes("Orrin", Set.of(), ""));
        OptionRow read = options.find(job.id(), hooks).orElseThrow();

        assertThatThrownBy(() -> options.save(
                        job.id(), new OptionDraft(hooks, read.version(), "Hooks", "", "", Set.of()), ada.personId()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("decided");
        assertThatThrownBy(() -> options.remove(job.id(), hooks, ada.personId()))
                .isInstanceOf(Refused.class);
    }

    @Test
    void cannotBeDecidedApartFromItsBidInTheDatabase() {
        sample.issued(job, ada);
        for (String sql : new String[] {
            "update bid set state = 'accepted', accepted_at = issued_at, accepted_on = issued_on where kind = 'option'",
            "update bid set state = 'accepted', accepted_at = issued_at, accepted_on = issued_on where kind = 'bid'",
            "update bid set state = 'withdrawn' where kind = 'bid'",
            "update bid set price_amount = price_amount + 1, margin_amount = margin_amount + 1, total_amount = total_amount + 1"
                    + " where kind = 'option'",
            "insert into estimate_option_line (option_id, job_id, task_id) select option_id, job_id, task_id"
                    + " from estimate_option_line where task_id is not null",
            "update estimate_option_line set estimate_other_id = (select id from estimate_other limit 1) where task_id is not null"
        }) {
            assertThatThrownBy(() -> transaction.executeWithoutResult(status -> {
                        trail.by(ada.personId());
                        jdbc.sql(sql).update();
                    }))
                    .as(sql)
                    .isInstanceOf(DataAccessException.class);
        }
    }
}
