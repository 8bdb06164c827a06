package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Typed;
import org.tallywright.trail.Trail;
import tools.jackson.databind.json.JsonMapper;

/** Issued bids, for this module's pages and for the modules that compare with what was agreed or show it to the client. */
@Service
public class Bids {
    private final BidRows rows;
    private final EstimateSheets sheets;
    private final BidAcceptance acceptance;
    private final JobDesk jobs;
    private final Trail trail;
    private final ShopClock clock;
    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final BidCosts costs;

    Bids(
            BidRows rows,
            EstimateSheets sheets,
            BidAcceptance acceptance,
            JobDesk jobs,
            Trail trail,
            ShopClock clock,
            JdbcClient jdbc,
            JsonMapper json,
            BidCosts costs) {
        this.rows = rows;
        this.sheets = sheets;
        this.acceptance = acceptance;
        this.jobs = jobs;
        this.trail = trail;
        this.clock = clock;
        this.jdbc = jdbc;
        this.json = json;
        this.costs = costs;
    }

    /** The accepted bid of a job and the accepted change orders after it, in the order they were issued; cost inside. */
    @Transactional(readOnly = true)
    public List<AcceptedBid> accepted(UUID job) {
        return rows.accepted(job).stream().map(Bid::asAccepted).toList();
    }

    /** All that the client may read of the bids of a job: none that were withdrawn, newest last. */
    @Transactional(readOnly = true)
    public List<BidPaper> papersForClient(UUID job) {
        return rows.findByJobIdOrderByIssuedAtAscIdAsc(job).stream()
                .filter(bid -> bid.state() != BidState.WITHDRAWN)
                .map(this::paper)
                .toList();
    }

    /** @throws NotHere for an unknown id */
    @Transactional(readOnly = true)
    public BidPaper paper(UUID bid) {
        return paper(rows.findById(bid).orElseThrow(() -> new NotHere("bid")));
    }

    private BidPaper paper(Bid bid) {
        return bid.asPaper(
                json.readValue(bid.document(), BidDocument.class),
                bid.standing(rows.isFollowed(bid.id()), clock.today()));
    }

    /** What stands of a job's bids: all that was agreed, or else the newest that is out. */
    @Transactional(readOnly = true)
    public Optional<BidMark> mark(UUID job) {
        return BidMark.of(sheets.bids(job, clock.today()));
    }

    /** The frozen sums and lines of a bid, whatever became of it: for the owner only. */
    @Transactional(readOnly = true)
    public AcceptedBid inside(UUID bid) {
        return rows.findById(bid).orElseThrow(() -> new NotHere("bid")).asAccepted();
    }

    /** What the bid was said to cost and to leave when it was issued; empty for an older one. For the owner only. */
    @Transactional(readOnly = true)
    public Optional<MoneyAtRisk> risk(UUID bid) {
        return costs.of(bid);
    }

    /**
     * The client accepts by the link of his job, today. Accepted already: nothing happens.
     *
     * @param name as the client typed it
     * @throws NotHere where the bid is not of that job
     * @throws Refused where it is withdrawn, declined, out of date, followed by a newer one, or the name is missing
     */
    @Transactional
    public void acceptByLink(UUID bidId, UUID jobId, String name) {
        trail.byShop();
        if (!rows.jobOf(bidId).filter(jobId::equals).isPresent()) {
            throw new NotHere("bid");
        }
        hold(jobId);
        Bid bid = acceptance.held(bidId);
        if (bid.state() == BidState.ACCEPTED) {
            return;
        }
        LocalDate today = clock.today();
        acceptance.guard(bid, bid.standing(rows.isFollowed(bidId), today));
        acceptance.accept(bid, name(name), today, null);
    }

    /**
     * The owner records a yes that was given on a day while the bid was good. The same again is a repeat.
     *
     * @throws Refused for a day outside, or where a newer bid stands
     */
    @Transactional
    public void accept(UUID bidId, String name, LocalDate on, UUID by) {
        UUID job = rows.jobOf(bidId).orElseThrow(() -> new NotHere("bid"));
        jobs.holdOpen(job, by);
        Bid bid = acceptance.held(bidId);
        String who = name(name);
        if (bid.wasAccepted(who, on)) {
            return;
        }
        if (bid.state() == BidState.ACCEPTED) {
            throw new Refused(bid.number() + " was accepted already.");
        }
        if (on.isBefore(bid.issuedOn()) || on.isAfter(clock.today())) {
            throw new Refused("on", "Write a day between the day it was issued and today.");
        }
        acceptance.guard(bid, bid.standing(rows.isFollowedByOneThatStands(bidId), on));
        acceptance.accept(bid, who, on, by);
    }

    private void hold(UUID job) {
        jdbc.sql("select id from job where id = ? for update")
                .param(job)
                .query(UUID.class)
                .single();
    }

    private static String name(String typed) {
        try {
            return Typed.requiredLine(typed, 120);
        } catch (Refused refused) {
            throw refused.at("name");
        }
    }
}
