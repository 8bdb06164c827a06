package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobState;
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

    /** All that the client may read of the bids of a job, newest last: none that were withdrawn, nor one open while the job is lost. */
    @Transactional(readOnly = true)
    public List<BidPaper> papersForClient(UUID job) {
        boolean lost = jobs.get(job).state() == JobState.LOST;
        return rows.offersOf(job).stream()
                .filter(bid -> bid.state() != BidState.WITHDRAWN)
                .map(this::paper)
                .filter(paper -> !lost || !paper.standing().isOpen())
                .toList();
    }

    /** @throws NotHere for an unknown id */
    @Transactional(readOnly = true)
    public BidPaper paper(UUID bid) {
        return paper(rows.offer(bid).orElseThrow(() -> new NotHere("bid")));
    }

    private BidPaper paper(Bid bid) {
        return bid.asPaper(
                json.readValue(bid.document(), BidDocument.class),
                bid.standing(rows.isFollowed(bid.id()), clock.today()),
                rows.optionsOf(bid.id()));
    }

    /** What stands of a job's bids: all that was agreed, or else the newest that is out. */
    @Transactional(readOnly = true)
    public Optional<BidMark> mark(UUID job) {
        return BidMark.of(sheets.bids(job, clock.today()));
    }

    /** The frozen sums and lines of a bid, whatever became of it: for the owner only. */
    @Transactional(readOnly = true)
    public AcceptedBid inside(UUID bid) {
        return rows.offer(bid).orElseThrow(() -> new NotHere("bid")).asAccepted();
    }

    /** The same of each option that a bid offers, in their order. */
    @Transactional(readOnly = true)
    public List<AcceptedBid> optionsInside(UUID bid) {
        return rows.optionsOf(bid).stream().map(Bid::asAccepted).toList();
    }

    /** What the bid was said to cost and to leave when it was issued; empty for an older one. For the owner only. */
    @Transactional(readOnly = true)
    public Optional<MoneyAtRisk> risk(UUID bid) {
        return costs.of(bid);
    }

    /** What the client answered; empty while he has not. For the owner only. */
    @Transactional(readOnly = true)
    public Optional<BidAnswer> answer(UUID bid) {
        return rows.offer(bid).flatMap(offer -> offer.answer().shown());
    }

    /**
     * The client accepts by the link of his job, today. Accepted already with the same options: nothing happens.
     *
     * @throws NotHere where the bid is not of that job
     * @throws Refused where it is withdrawn, declined, out of date, followed by a newer one, or the name is missing
     */
    @Transactional
    public void acceptByLink(UUID bidId, UUID jobId, ClientYes said) {
        Bid bid = heldByLink(bidId, jobId);
        if (bid.state() == BidState.ACCEPTED) {
            guardSameOptions(bid, said.options());
            return;
        }
        LocalDate today = clock.today();
        acceptance.guard(bid, bid.standing(rows.isFollowed(bidId), today));
        acceptance.accept(bid, new BidAcceptance.Yes(name(said.name()), today, null, said.from(), said.options()));
    }

    /**
     * The client says no by the link of his job. Declined already: nothing happens, the first reason stays.
     *
     * @param from the network address it came from, as the server saw it
     * @throws NotHere where the bid is not of that job
     * @throws Refused where it was accepted, withdrawn or followed by a newer one, or no reason is given
     */
    @Transactional
    public void declineByLink(UUID bidId, UUID jobId, Refusal reason, String from) {
        Bid bid = heldByLink(bidId, jobId);
        if (bid.state() == BidState.DECLINED) {
            return;
        }
        switch (bid.standing(rows.isFollowed(bidId), clock.today())) {
            case ACCEPTED -> throw new Refused(bid.number() + " was accepted. Speak with the shop about a change.");
            case WITHDRAWN -> throw new Refused(bid.number() + " was withdrawn.");
            case SUPERSEDED -> throw new Refused("A newer bid followed " + bid.number() + ". Answer that one.");
            case OPEN, EXPIRED, DECLINED -> {}
        }
        if (reason.isEmpty()) {
            throw new Refused("reason", "Pick a reason, or say it in a few words.");
        }
        bid.decline(reason, new GivenAnswer.How(clock.today(), clock.now(), GivenAnswer.LINK, from));
        rows.optionsOf(bidId).forEach(Bid::leaveOut);
    }

    private Bid heldByLink(UUID bidId, UUID jobId) {
        trail.byShop();
        if (!rows.jobOf(bidId).filter(jobId::equals).isPresent()) {
            throw new NotHere("bid");
        }
        hold(jobId);
        return acceptance.held(bidId);
    }

    /** The bid of the job that was issued just before this one, whatever became of it; none for a change order. */
    @Transactional(readOnly = true)
    public Optional<AcceptedBid> before(UUID bidId) {
        return rows.offer(bidId)
                .filter(bid -> bid.kind() == BidKind.BID)
                .flatMap(bid -> rows.offersOf(bid.jobId()).stream()
                        .filter(one -> one.kind() == BidKind.BID)
                        .takeWhile(one -> !one.id().equals(bidId))
                        .reduce((earlier, later) -> later))
                .map(Bid::asAccepted);
    }

    /**
     * The owner records a yes that was given on a day while the bid was good. The same again is a repeat.
     *
     * @param options that the client took, by their ids on the paper
     * @throws Refused for a day outside, or where a newer bid stands
     */
    @Transactional
    public void accept(UUID bidId, String name, LocalDate on, Set<UUID> options, UUID by) {
        UUID job = rows.jobOf(bidId).orElseThrow(() -> new NotHere("bid"));
        jobs.holdOpen(job, by);
        Bid bid = acceptance.held(bidId);
        String who = name(name);
        if (bid.wasAccepted(who, on)) {
            guardSameOptions(bid, options);
            return;
        }
        if (bid.state() == BidState.ACCEPTED) {
            throw new Refused(bid.number() + " was accepted already.");
        }
        if (on.isBefore(bid.issuedOn()) || on.isAfter(clock.today())) {
            throw new Refused("on", "Write a day between the day it was issued and today.");
        }
        acceptance.guard(bid, bid.standing(rows.isFollowedByOneThatStands(bidId), on));
        acceptance.accept(bid, new BidAcceptance.Yes(who, on, by, "", options));
    }

    private void guardSameOptions(Bid bid, Set<UUID> options) {
        Set<UUID> chosen = rows.optionsOf(bid.id()).stream()
                .filter(option -> option.state() == BidState.ACCEPTED)
                .map(Bid::id)
                .collect(Collectors.toSet());
        if (!chosen.equals(options)) {
            throw new Refused(
                    "options",
                    bid.number()
                            + " was accepted already, with other options. What is to be added or left out now is a change order.");
        }
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
