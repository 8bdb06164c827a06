package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
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
import org.tallywright.shared.Stale;
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
        Runnable client = () -> bids.acceptByLink(bid, job.id(), new ClientYes("Orrin Baskwell", Set.of(), ""));
        Runnable owner = () -> bids.accept(bid, "Orrin", TODAY, Set.of(), ada.personId());

        List<@Nullable Throwable> failed = atOnce(List.of(client, owner, client, owner));

        // Whoever comes second is told so; a second tap of the first is no failure.
        assertThat(failed).containsNull();
        assertThat(failed.stream().filter(Objects::nonNull).map(Throwable::getMessage))
                .allMatch(said -> said.endsWith("was accepted already."));
        assertThat(jdbc.sql("select count(*) from audit_entry where subject = 'bid' and act = 'update'")
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
    }

    /** Whichever comes first: a bid that was followed is not accepted, and one that was accepted is not followed by another bid. */
    @RepeatedTest(4)
    void neitherFollowsAnAcceptedBidNorAcceptsAFollowedOne() throws Exception {
        UUID old = sample.issued(job, ada);
        clock.advance(Duration.ofMinutes(1));
        UUID next = Ids.next();
        IssueBid said = sample.said(next, job, "Window seat");

        List<@Nullable Throwable> refused = atOnce(List.of(
                () -> bids.acceptByLink(old, job.id(), new ClientYes("Orrin Baskwell", Set.of(), "")),
                () -> bidDesk.issue(job.id(), said, ada.personId())));

        boolean accepted = bids.paper(old).accepted();
        assertThat(refused.stream().filter(Objects::nonNull).map(Throwable::getClass))
                .isSubsetOf(List.of(Refused.class, Stale.class));
        assertThat(refused.get(0) == null).isEqualTo(accepted);
        assertThat(sample.bidsOf(job).contains(next) && accepted).isFalse();
    }

    /** Four times at the same moment; none may fail. */
    private static void atOnce(Runnable act) throws Exception {
        assertThat(atOnce(List.of(act, act, act, act))).allMatch(Objects::isNull);
    }

    /** @return what each failed by, or null, in their order */
    private static List<@Nullable Throwable> atOnce(List<Runnable> acts) throws Exception {
        CyclicBarrier start = new CyclicBarrier(acts.size());
        ExecutorService threads = Executors.newFixedThreadPool(acts.size());
        try {
            List<Future<?>> all = new ArrayList<>();
            for (Runnable act : acts) {
                all.add(threads.submit(() -> {
                    start.await();
                    act.run();
                    return null;
                }));
            }
            List<@Nullable Throwable> failed = new ArrayList<>();
            for (Future<?> one : all) {
                failed.add(failure(one));
            }
            return failed;
        } finally {
            threads.shutdownNow();
        }
    }

    private static @Nullable Throwable failure(Future<?> one) throws Exception {
        try {
            one.get(30, TimeUnit.SECONDS);
            return null;
        } catch (ExecutionException failed) {
            return failed.getCause();
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

        for (String sql : List.of(
                "update bid set price_amount = price_amount + 10, margin_amount = margin_amount + 10, total_amount = total_amount + 10 where id = ?",
                "update bid_task set quantity = 1 where bid_id = ?",
                "delete from bid_task where bid_id = ?",
                "insert into bid_other (bid_id, position, description, amount) values (?, 99, 'Parking', 10)",
                "delete from bid where id = ?")) {
            assertThatThrownBy(() -> asAda(sql, bid))
                    .as(sql)
                    .hasRootCauseInstanceOf(java.sql.SQLException.class)
                    .rootCause()
                    .extracting("SQLState")
                    .isEqualTo("TW002");
        }
    }

    /** The order of the lines makes no difference to the cent, and the frozen lines add up to the frozen sums. */
    @RepeatedTest(3)
    void comesToTheSameWhateverTheOrderOfItsLines(RepetitionInfo turn) {
        List<String> amounts = new ArrayList<>(List.of("80.05", "0.33", "12.99", "1204.17", "7.01"));
        Collections.shuffle(amounts, new Random(turn.getCurrentRepetition()));
        amounts.forEach(amount -> sample.other(job, "Cost of " + amount, amount, ada));

        UUID bid = sample.issued(job, ada);

        String sums = jdbc.sql("""
                        select other_amount || ' ' || (select sum(amount) from bid_other where bid_id = b.id)
                            || ' ' || (select sum(amount) from bid_material where bid_id = b.id) - material_amount
                        from bid b where id = ?""").param(bid).query(String.class).single();
        assertThat(sums).isEqualTo("1350.05 1350.05 0.00");
    }

    private void asAda(String sql, UUID bid) {
        transaction.executeWithoutResult(status -> {
            trail.by(ada.personId());
            jdbc.sql(sql).param(bid).update();
        });
    }
}
