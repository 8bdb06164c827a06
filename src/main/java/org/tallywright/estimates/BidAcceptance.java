package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.JobState;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;

/** The rules of a yes, whoever records it. The transaction has named who acts and holds the job. */
@Component
class BidAcceptance {
    private final BidRows bids;
    private final Estimates estimates;
    private final JobDesk jobs;
    private final ShopClock clock;
    private final JdbcClient jdbc;

    BidAcceptance(BidRows bids, Estimates estimates, JobDesk jobs, ShopClock clock, JdbcClient jdbc) {
        this.bids = bids;
        this.estimates = estimates;
        this.jobs = jobs;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /** What both ways ask of a bid that is not accepted yet, on the day of the yes. */
    void guard(Bid bid, BidStanding standing) {
        switch (standing) {
            case WITHDRAWN -> throw new Refused(bid.number() + " was withdrawn.");
            case DECLINED -> throw new Refused(bid.number() + " was declined. Issue a new one.");
            case EXPIRED ->
                throw new Refused(
                        "on", bid.number() + " was good until " + BidWriter.DAY.format(bid.validUntil()) + ".");
            case SUPERSEDED -> throw new Refused("A newer bid followed " + bid.number() + ".");
            case OPEN, ACCEPTED -> {}
        }
        JobRef job = jobs.get(bid.jobId()).guardOpen();
        if (bid.kind() == BidKind.CHANGE_ORDER) {
            guardChange(bid, job);
        } else if (bids.accepted(bid.jobId()).stream().anyMatch(b -> b.kind() == BidKind.BID)) {
            throw new Refused("Another bid of this job was accepted. Offer a change order.");
        }
    }

    private void guardChange(Bid bid, JobRef job) {
        if (job.state() != JobState.RUNNING) {
            throw new Refused("The job is not running.");
        }
        soldAlready(bid.id()).ifPresent(other -> {
            throw new Refused("A line of it is in " + other + ", which was accepted. Withdraw it and issue a new one.");
        });
    }

    private Optional<String> soldAlready(UUID bid) {
        return jdbc.sql("""
                        select b.number from bid b where b.state = 'accepted' and b.id <> :bid and (
                            exists (select 1 from bid_task o join bid_task m on m.task_id = o.task_id
                                where o.bid_id = b.id and m.bid_id = :bid)
                            or exists (select 1 from bid_material o
                                join bid_material m on m.estimate_material_id = o.estimate_material_id
                                where o.bid_id = b.id and m.bid_id = :bid)
                            or exists (select 1 from bid_other o
                                join bid_other m on m.estimate_other_id = o.estimate_other_id
                                where o.bid_id = b.id and m.bid_id = :bid))
                        order by b.number limit 1""").param("bid", bid).query(String.class).optional();
    }

    /** @param by null where the client accepted by his link */
    void accept(Bid bid, String name, LocalDate on, @Nullable UUID by) {
        bid.accept(name, on, clock.now(), by == null ? "link" : "owner");
        if (bid.kind() == BidKind.BID) {
            jobs.award(bid.jobId(), on, by, bid.number() + " accepted by " + name);
        }
        // The words are in the document now; what is offered next has words of its own.
        estimates
                .findById(bid.jobId())
                .ifPresent(e -> e.word(new BidWords("", "", e.words().terms())));
    }

    Bid held(UUID bidId) {
        return bids.hold(bidId).orElseThrow(() -> new NotHere("bid"));
    }
}
