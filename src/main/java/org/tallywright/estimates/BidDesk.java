package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.JobState;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import tools.jackson.databind.json.JsonMapper;

/** Issues numbered bids and change orders from a job's working sum, and takes them back. */
@Service
public class BidDesk {
    private final JobDesk jobs;
    private final BidRows bids;
    private final EstimateDesk estimates;
    private final EstimatePricer pricer;
    private final OfferMaker offers;
    private final BidWriter writer;
    private final ShopClock clock;
    private final JsonMapper json;
    private final ObjectProvider<HoursOutlook> outlook;
    private final BidCosts costs;
    private final OfferedWork work;

    BidDesk(
            JobDesk jobs,
            BidRows bids,
            EstimateDesk estimates,
            EstimatePricer pricer,
            OfferMaker offers,
            BidWriter writer,
            ShopClock clock,
            JsonMapper json,
            ObjectProvider<HoursOutlook> outlook,
            BidCosts costs,
            OfferedWork work) {
        this.jobs = jobs;
        this.bids = bids;
        this.estimates = estimates;
        this.pricer = pricer;
        this.offers = offers;
        this.writer = writer;
        this.clock = clock;
        this.json = json;
        this.outlook = outlook;
        this.costs = costs;
        this.work = work;
    }

    /**
     * Copies the working sum into a bid, or after an accepted bid what is new into a change order. The same id again is
     * a repeat.
     *
     * @throws Stale when that id was issued under another title
     * @throws Refused where there is nothing to offer, no rate for the hours, or the sum is not what the page showed
     * @throws Stale where somebody else changed the words since they were read
     */
    @Transactional
    public void issue(UUID jobId, IssueBid said, UUID by) {
        JobRef job = jobs.holdOpen(jobId, by);
        Bid known = bids.findById(said.id()).orElse(null);
        if (known != null) {
            guardRepeat(known, jobId, said);
            return;
        }
        if (job.state() == JobState.LOST) {
            throw new Refused("The job is marked lost. Reopen it before you offer it again.");
        }
        estimates.word(jobId, said.version(), said.words(), by);
        WorkingSum working = pricer.of(jobId);
        Offer offer = offers.make(jobId, working, said);
        List<OfferMaker.Optional> options = offers.options(jobId, working);
        BidKind kind = working.sheet().nextKind();
        BidNumber number =
                new BidNumber(jobId, job.number(), kind, kind.mark(bids.countByJobIdAndKind(jobId, kind.code())));
        LocalDate today = clock.today();
        LocalDate until = today.plusDays(said.validDays());
        BidDocument document = writer.write(job, number, said, offer, options, today, until);
        Bid bid = new Bid(said.id(), number, offer, json.writeValueAsString(document));
        bid.issue(by, clock.now(), today, until);
        bid.addDays(kind == BidKind.CHANGE_ORDER ? said.addedDays() : 0);
        bids.saveAndFlush(bid);
        working.risk().ifPresent(risk -> costs.keep(bid.id(), risk));
        outlook.ifAvailable(past -> past.issued(bid.id(), jobId, working.sheet().next()));
        for (int i = 0; i < options.size(); i++) {
            issue(options.get(i), number.option(i + 1), bid, document.options().get(i));
        }
        if (kind == BidKind.CHANGE_ORDER) {
            work.offer(jobId, bid.taskIds(), by, "in " + bid.number());
        }
        jobs.startBidding(jobId, by);
    }

    private void issue(OfferMaker.Optional option, BidNumber number, Bid of, BidDocument.OptionRow written) {
        bids.save(Bid.option(number, option, json.writeValueAsString(written), of));
        option.source().working().risk().ifPresent(risk -> {
            bids.flush();
            costs.keep(option.id(), risk);
        });
    }

    private static void guardRepeat(Bid known, UUID jobId, IssueBid said) {
        if (!known.jobId().equals(jobId)) {
            throw new NotHere("bid");
        }
        if (!known.title().equals(said.title())) {
            throw new Stale("bid", List.of(new Stale.Row("Title", known.title(), said.title())));
        }
    }

    /** Takes an offer back; one that is back already stays so. */
    @Transactional
    public void withdraw(UUID bidId, UUID by) {
        held(bidId, by).withdraw();
        bids.optionsOf(bidId).forEach(Bid::withdraw);
    }

    /**
     * The owner records that the client said no. The same again is a repeat.
     *
     * @throws Refused where another reason was given before
     */
    @Transactional
    public void decline(UUID bidId, Refusal reason, UUID by) {
        Bid bid = held(bidId, by);
        if (bid.state() != BidState.DECLINED) {
            bid.decline(reason, new GivenAnswer.How(clock.today(), clock.now(), GivenAnswer.OWNER, ""));
            bids.optionsOf(bidId).forEach(Bid::leaveOut);
        } else if (!reason.isEmpty() && !bid.answer().refusal().equals(reason)) {
            throw new Refused(bid.number() + " was declined already; the reason stays as it was given.");
        }
    }

    private Bid held(UUID bidId, UUID by) {
        UUID job = bids.jobOf(bidId).orElseThrow(() -> new NotHere("bid"));
        jobs.holdOpen(job, by);
        return bids.hold(bidId).orElseThrow(() -> new NotHere("bid"));
    }
}
