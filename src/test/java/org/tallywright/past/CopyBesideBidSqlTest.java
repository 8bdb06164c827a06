package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.shared.Refused;

/** A copy into a job at the very moment when its client says yes to the bid. */
@AppTest
class CopyBesideBidSqlTest {
    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    PastJobs past;

    @Autowired
    CopyOffers offers;

    @Autowired
    Copyist copyist;

    @Autowired
    Bids bids;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    private final ExecutorService threads = Executors.newFixedThreadPool(2);
    private final CountDownLatch acted = new CountDownLatch(1);
    private final CountDownLatch commit = new CountDownLatch(1);
    private JobRef into;
    private UUID bid;
    private UUID by;
    private CopyPlan plan;

    @BeforeEach
    void offer() {
        SamplePast.Built built = sample.closed();
        sample.price(built.seat().oak(), "12.50");
        by = built.seat().owner().personId();
        into = jobs.lead(built.seat().owner(), "Seat for the library");
        jobs.task(
                into,
                null,
                jobs.kind("travel", "Travel", "Install", "trip", "1"),
                "1",
                built.seat().owner());
        bid = estimates.issued(into, built.seat().owner());
        plan = sample.plan(
                offers.offer(into, past.piece(built.piece()), false, Map.of(), Map.of()), HoursChoice.Basis.TOOK);
    }

    @AfterEach
    void stop() {
        commit.countDown();
        threads.shutdownNow();
    }

    private void yes() {
        bids.acceptByLink(bid, into.id(), new ClientYes("Orrin", Set.of(), "203.0.113.7"));
    }

    private void copy() {
        copyist.copy(into.id(), plan, by);
    }

    /** Runs the first up to its commit, starts the second, and lets the first commit once the second waits for it. */
    private Future<?> second(Runnable first, Runnable then) throws Exception {
        Future<?> ahead = threads.submit(() -> transaction.executeWithoutResult(status -> {
            first.run();
            acted.countDown();
            await(commit);
        }));
        await(acted);
        Future<?> behind = threads.submit(then);
        long until = System.nanoTime() + Duration.ofSeconds(30).toNanos();
        while (waiting() == 0 && !behind.isDone() && System.nanoTime() < until) {
            Thread.onSpinWait();
        }
        assertThat(behind.isDone()).as("went ahead of what was not committed").isFalse();
        commit.countDown();
        ahead.get(30, TimeUnit.SECONDS);
        return behind;
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(30, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private int waiting() {
        return jdbc.sql("select count(*) from pg_locks where not granted")
                .query(Integer.class)
                .single();
    }

    private int tasks() {
        return jdbc.sql("select count(*) from task where job_id = ?")
                .param(into.id())
                .query(Integer.class)
                .single();
    }

    @Test
    void comesTooLateAfterTheYes() throws Exception {
        Future<?> copy = second(this::yes, this::copy);

        assertThatThrownBy(() -> copy.get(30, TimeUnit.SECONDS))
                .cause()
                .isInstanceOf(Refused.class)
                .hasMessageContaining("was accepted");
        assertThat(tasks()).isEqualTo(1);
    }

    /** Its lines are in the job then, and in nothing that was agreed. */
    @Test
    void isNoPartOfTheBidThatWasOutWhenItCame() throws Exception {
        BidPaper before = bids.paper(bid);
        second(this::copy, this::yes).get(30, TimeUnit.SECONDS);

        BidPaper after = bids.paper(bid);
        assertThat(after.accepted()).isTrue();
        assertThat(after.agreed()).isEqualTo(before.total());
        assertThat(tasks()).isEqualTo(3);
        assertThat(jdbc.sql("select count(*) from bid_task where bid_id = ?")
                        .param(bid)
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
    }
}
