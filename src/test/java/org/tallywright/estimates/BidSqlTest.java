package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.JobState;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

@AppTest
class BidSqlTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates sample;

    @Autowired
    EstimateLines desk;

    @Autowired
    BidDesk bidDesk;

    @Autowired
    Bids bids;

    @Autowired
    JobDesk jobDesk;

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

    @BeforeEach
    void bid() {
        ada = people.owner();
        job = sample.windowSeat(ada);
    }

    @Test
    void copiesLinesAndSumsAndNumbersByLetter() {
        UUID first = sample.issued(job, ada);
        UUID second = sample.issued(job, ada);

        AcceptedBid a = bids.inside(first);
        assertThat(a.number()).isEqualTo(job.number() + " A");
        assertThat(bids.inside(second).number()).isEqualTo(job.number() + " B");
        assertThat(a.tasks()).extracting(BidTask::name).containsExactly("Travel", "Rip hardwood", "Glue up panel");
        assertThat(a.materials())
                .singleElement()
                .satisfies(m -> assertThat(m.purchaseQuantity().toString()).isEqualTo("45"));
        assertThat(a.sums().hours()).isEqualTo(Hours.ofMinutes(390));
        // 6.5 h x 49.40; 45 bf x 13.40; 45.50; 6.5 h x 15; / 0.85; to the nearest 10
        PriceSum sum = a.sums().sum();
        assertThat(sum.labour()).isEqualTo(Money.of("321.10"));
        assertThat(sum.material()).isEqualTo(Money.of("603.00"));
        assertThat(sum.overhead()).isEqualTo(Money.of("97.50"));
        assertThat(sum.beforeRounding()).isEqualTo(Money.of("1255.41"));
        assertThat(sum.price()).isEqualTo(Money.of("1260.00"));
        assertThat(jobDesk.get(job.id()).state()).isEqualTo(JobState.BIDDING);
    }

    @Test
    void issuesOnceForOneId() {
        UUID id = Ids.next();
        IssueBid said = sample.said(id, job, "Window seat");

        bidDesk.issue(job.id(), said, ada.personId());
        bidDesk.issue(job.id(), said, ada.personId());

        assertThat(sample.bidsOf(job)).containsExactly(id);
        JobRef other = jobs.lead(ada, "Pantry");
        assertThatThrownBy(() -> bidDesk.issue(other.id(), said, ada.personId()))
                .isInstanceOf(NotHere.class);
    }

    @Test
    void refusesToIssueAnotherSumThanWasShown() {
        IssueBid said = sample.said(Ids.next(), job, "Window seat");
        sample.other(job, "Hired lift", "120", ada);

        assertThatThrownBy(() -> bidDesk.issue(job.id(), said, ada.personId()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("1,260.00");
        assertThat(sample.bidsOf(job)).isEmpty();
    }

    @Test
    void refusesToIssueNothing() {
        JobRef empty = jobs.lead(ada, "Pantry");

        assertThatThrownBy(() -> bidDesk.issue(empty.id(), sample.said(Ids.next(), empty, "Pantry"), ada.personId()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nothing to offer");
    }

    @Test
    void runsTheJobWhenTheClientAcceptsByLink() {
        UUID bid = sample.issued(job, ada);

        bids.acceptByLink(bid, job.id(), new ClientYes("  Orrin Baskwell ", Set.of(), ""));
        bids.acceptByLink(bid, job.id(), new ClientYes("Somebody else", Set.of(), ""));

        BidPaper paper = bids.paper(bid);
        assertThat(paper.standing()).isEqualTo(BidStanding.ACCEPTED);
        assertThat(paper.acceptedName()).isEqualTo("Orrin Baskwell");
        assertThat(paper.acceptedOn()).isEqualTo(TODAY);
        assertThat(jobDesk.get(job.id()).state()).isEqualTo(JobState.RUNNING);
        assertThat(bids.accepted(job.id())).extracting(AcceptedBid::id).containsExactly(bid);
    }

    @Test
    void refusesTheLinkForWhatIsNotOpen() {
        UUID withdrawn = sample.issued(job, ada);
        bidDesk.withdraw(withdrawn, ada.personId());
        assertThatThrownBy(() -> bids.acceptByLink(withdrawn, job.id(), new ClientYes("Orrin", Set.of(), "")))
                .hasMessageContaining("withdrawn");

        clock.advance(Duration.ofMinutes(5));
        UUID superseded = sample.issued(job, ada);
        clock.advance(Duration.ofMinutes(5));
        UUID open = sample.issued(job, ada);
        assertThatThrownBy(() -> bids.acceptByLink(superseded, job.id(), new ClientYes("Orrin", Set.of(), "")))
                .hasMessageContaining("newer");

        JobRef other = jobs.lead(ada, "Pantry");
        assertThatThrownBy(() -> bids.acceptByLink(open, other.id(), new ClientYes("Orrin", Set.of(), "")))
                .isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> bids.acceptByLink(open, job.id(), new ClientYes("  ", Set.of(), "")))
                .isInstanceOf(Refused.class);

        clock.advance(Duration.ofDays(31));
        assertThatThrownBy(() -> bids.acceptByLink(open, job.id(), new ClientYes("Orrin", Set.of(), "")))
                .hasMessageContaining("good until");
        assertThat(jobDesk.get(job.id()).state()).isEqualTo(JobState.BIDDING);
    }

    @Test
    void takesAYesTheOwnerRecordsLaterButNotOneGivenTooLate() {
        UUID bid = sample.issued(job, ada);
        clock.advance(Duration.ofDays(40));

        assertThatThrownBy(() -> bids.accept(bid, "Orrin", TODAY.plusDays(31), Set.of(), ada.personId()))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> bids.accept(bid, "Orrin", TODAY.minusDays(1), Set.of(), ada.personId()))
                .isInstanceOf(Refused.class);
        bids.accept(bid, "Orrin", TODAY.plusDays(30), Set.of(), ada.personId());
        bids.accept(bid, "Orrin", TODAY.plusDays(30), Set.of(), ada.personId());

        assertThat(bids.paper(bid).standing()).isEqualTo(BidStanding.ACCEPTED);
    }

    @Test
    void acceptsOneBidOfAJobOnly() {
        UUID first = sample.issued(job, ada);
        bids.accept(first, "Orrin", TODAY, Set.of(), ada.personId());

        assertThatThrownBy(() -> bidDesk.withdraw(first, ada.personId())).hasMessageContaining("stays as agreed");
        assertThatThrownBy(() -> sample.issued(job, ada)).hasMessageContaining("Every line");
    }

    @Test
    void offersOnlyWhatIsNewAfterAcceptance() {
        bids.accept(sample.issued(job, ada), "Orrin", TODAY, Set.of(), ada.personId());
        UUID line = sample.other(job, "Drawer slides", "80", ada);
        clock.advance(Duration.ofMinutes(1));
        UUID change = sample.issued(job, ada);

        AcceptedBid co = bids.inside(change);
        assertThat(co.number()).isEqualTo(job.number() + " CO-1");
        assertThat(co.kind()).isEqualTo(BidKind.CHANGE_ORDER);
        assertThat(co.tasks()).isEmpty();
        assertThat(co.others()).extracting(BidOther::description).containsExactly("Drawer slides");
        assertThatThrownBy(() -> desk.removeOther(job.id(), line, ada.personId()))
                .hasMessageContaining("which is out");

        bids.acceptByLink(change, job.id(), new ClientYes("Orrin", Set.of(), ""));
        assertThat(bids.accepted(job.id()))
                .extracting(AcceptedBid::number)
                .containsExactly(job.number() + " A", job.number() + " CO-1");
        assertThatThrownBy(() -> desk.removeOther(job.id(), line, ada.personId()))
                .hasMessageContaining("accepted");
    }

    @Test
    void neverSellsALineTwice() {
        bids.accept(sample.issued(job, ada), "Orrin", TODAY, Set.of(), ada.personId());
        sample.other(job, "Drawer slides", "80", ada);
        clock.advance(Duration.ofMinutes(1));
        UUID old = sample.issued(job, ada);
        clock.advance(Duration.ofDays(31));
        UUID next = sample.issued(job, ada);
        bids.accept(next, "Orrin", TODAY.plusDays(31), Set.of(), ada.personId());

        assertThatThrownBy(() -> bids.accept(old, "Orrin", TODAY, Set.of(), ada.personId()))
                .hasMessageContaining("CO-2");
    }

    @Test
    void issuesOnceWhenTwoTapsArriveTogether() throws Exception {
        UUID id = Ids.next();
        IssueBid said = sample.said(id, job, "Window seat");

        atOnce(() -> bidDesk.issue(job.id(), said, ada.personId()));

        assertThat(sample.bidsOf(job)).containsExactly(id);
    }

    @Test
    void acceptsOnceWhenClientAndOwnerSayYesTogether() throws Exception {
        UUID bid = sample.issued(job, ada);

        atOnce(() -> bids.acceptByLink(bid, job.id(), new ClientYes("Orrin Baskwell", Set.of(), "")));

        assertThat(jdbc.sql("select count(*) from audit_entry where subject = 'bid' and act = 'update'")
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
    }

    /** Four times at the same moment; none may fail. */
    private static void atOnce(Runnable act) throws Exception {
        CyclicBarrier start = new CyclicBarrier(4);
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Future<?>> all = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                all.add(threads.submit(() -> {
                    start.await();
                    act.run();
                    return null;
                }));
            }
            for (Future<?> one : all) {
                one.get(30, TimeUnit.SECONDS);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void listsInAChangeOrderThePiecesItTouches() {
        UUID shelf = jobs.piece(job, "Shelf over the door", "38", "10", "9", ada);
        bids.accept(sample.issued(job, ada), "Orrin", TODAY, Set.of(), ada.personId());
        sample.material(job, shelf, sample.material("maple", "Maple", "bf", "0.7", "9"), "6", ada);
        clock.advance(Duration.ofMinutes(1));

        assertThat(bids.paper(sample.issued(job, ada)).document().pieces())
                .extracting(BidDocument.PieceRow::name)
                .containsExactly("Shelf over the door");
    }

    @Test
    void isFrozenInTheDatabase() {
        UUID bid = sample.issued(job, ada);

        assertThatThrownBy(() -> asAda(
                        "update bid set price_amount = price_amount + 10, margin_amount = margin_amount + 10, total_amount = total_amount + 10 where id = ?",
                        bid))
                .isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> asAda("update bid_task set quantity = 1 where bid_id = ?", bid))
                .isInstanceOf(DataAccessException.class);
    }

    private void asAda(String sql, UUID bid) {
        transaction.executeWithoutResult(status -> {
            trail.by(ada.personId());
            jdbc.sql(sql).param(bid).update();
        });
    }
}
