package org.tallywright.estimates;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.JobState;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;

/** The rules of a yes, whoever records it. The transaction has named who acts and holds the job. */
@Component
class BidAcceptance {
    private final BidRows bids;
    private final Estimates estimates;
    private final JobDesk jobs;
    private final TaskDesk tasks;
    private final OfferedWork work;
    private final ObjectProvider<HoursOutlook> outlook;
    private final ShopClock clock;
    private final JdbcClient jdbc;

    BidAcceptance(
            BidRows bids,
            Estimates estimates,
            JobDesk jobs,
            TaskDesk tasks,
            OfferedWork work,
            ObjectProvider<HoursOutlook> outlook,
            ShopClock clock,
            JdbcClient jdbc) {
        this.bids = bids;
        this.estimates = estimates;
        this.jobs = jobs;
        this.tasks = tasks;
        this.work = work;
        this.outlook = outlook;
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
        if (job.state() == JobState.LOST) {
            throw new Refused(bid.number() + " does not stand any more: the job was given up.");
        }
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
                        with offered as (select id from bid where id = :bid or option_of = :bid)
                        select b.number from bid b where b.state = 'accepted' and (
                            exists (select 1 from bid_task o join bid_task m on m.task_id = o.task_id
                                where o.bid_id = b.id and m.bid_id in (select id from offered))
                            or exists (select 1 from bid_material o
                                join bid_material m on m.estimate_material_id = o.estimate_material_id
                                where o.bid_id = b.id and m.bid_id in (select id from offered))
                            or exists (select 1 from bid_other o
                                join bid_other m on m.estimate_other_id = o.estimate_other_id
                                where o.bid_id = b.id and m.bid_id in (select id from offered)))
                        order by b.number limit 1""").param("bid", bid).query(String.class).optional();
    }

    /**
     * A yes.
     *
     * @param by null where the client accepted by his link
     * @param from the network address of a yes by link, else empty
     * @param options that the client took
     */
    record Yes(String name, LocalDate on, @Nullable UUID by, String from, Set<UUID> options) {
        GivenAnswer.How how(Instant at) {
            return new GivenAnswer.How(on, at, by == null ? GivenAnswer.LINK : GivenAnswer.OWNER, from);
        }
    }

    void accept(Bid bid, Yes yes) {
        List<Bid> options = bids.optionsOf(bid.id());
        if (!options.stream().map(Bid::id).collect(Collectors.toSet()).containsAll(yes.options())) {
            throw new Refused("options", "Pick options of " + bid.number() + ".");
        }
        BidPaper.guardOneOfEach(options.stream().map(Bid::asOption).toList(), yes.options());
        bid.accept(yes.name(), yes.how(clock.now()));
        if (bid.kind() == BidKind.BID) {
            jobs.award(bid.jobId(), yes.on(), yes.by(), bid.number() + " accepted by " + yes.name());
        }
        jobs.postpone(bid.jobId(), bid.addedDays(), yes.by())
                .ifPresent(moved -> bid.movedPromise(moved.from(), moved.to()));
        plan(bid, yes);
        options.forEach(option -> decide(option, yes));
        if (bid.kind() == BidKind.BID && !yes.options().isEmpty()) {
            keepForecast(bid, options, yes);
        }
        freeLaterLines(bid.id());
        // The words are in the document now; what is offered next has words of its own.
        estimates
                .findById(bid.jobId())
                .ifPresent(e -> e.word(new BidWords("", "", "", e.words().terms())));
    }

    /** Of what was agreed and of that day, or none: not for a yes that is written down late, nor with a line changed since the issue. */
    private void keepForecast(Bid bid, List<Bid> options, Yes yes) {
        List<Bid> agreed = Stream.concat(Stream.of(bid), options.stream())
                .filter(one -> one.state() == BidState.ACCEPTED)
                .toList();
        if (yes.on().equals(clock.today()) && isUnchanged(agreed)) {
            List<UUID> work =
                    agreed.stream().flatMap(one -> one.taskIds().stream()).toList();
            outlook.ifAvailable(past -> past.agreed(bid.id(), work));
        }
    }

    private boolean isUnchanged(List<Bid> agreed) {
        return jdbc.sql("""
                        select count(*) from bid_task o left join task t on t.id = o.task_id
                        where o.bid_id in (:bids) and t.quantity is distinct from o.quantity""")
                        .param("bids", agreed.stream().map(Bid::id).toList())
                        .query(Integer.class)
                        .single()
                == 0;
    }

    private void plan(Bid agreed, Yes yes) {
        work.plan(agreed.jobId(), agreed.taskIds(), yes.on(), yes.by(), agreed.number() + " was accepted");
    }

    /** What is not taken stays on the bid to be read; its tasks are no longer work to be done. */
    private void decide(Bid option, Yes yes) {
        if (yes.options().contains(option.id())) {
            option.accept(yes.name(), yes.how(clock.now()));
            plan(option, yes);
            return;
        }
        option.leaveOut();
        for (UUID task : option.taskIds()) {
            tasks.leaveOut(option.jobId(), task, yes.on(), yes.by(), option.number() + " was not taken");
        }
    }

    /** A line put into an option after it was issued is in no paper: it goes back to the base, to be offered next. */
    private void freeLaterLines(UUID bid) {
        jdbc.sql("""
                        delete from estimate_option_line l using bid b where b.option_of = ? and l.option_id = b.option_id
                            and not exists (select from bid_task t where t.bid_id = b.id and t.task_id = l.task_id)
                            and not exists (select from bid_material m where m.bid_id = b.id
                                and m.estimate_material_id = l.estimate_material_id)
                            and not exists (select from bid_other o where o.bid_id = b.id
                                and o.estimate_other_id = l.estimate_other_id)""").param(bid).update();
    }

    Bid held(UUID bidId) {
        return bids.hold(bidId).orElseThrow(() -> new NotHere("bid"));
    }
}
