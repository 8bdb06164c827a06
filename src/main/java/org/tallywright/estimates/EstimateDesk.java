package org.tallywright.estimates;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;

/** Keeps the rates and the words of a job's estimate. */
@Service
public class EstimateDesk {
    private final JobDesk jobs;
    private final EstimateOpener opener;
    private final ObjectProvider<HoursOutlook> outlook;

    EstimateDesk(JobDesk jobs, EstimateOpener opener, ObjectProvider<HoursOutlook> outlook) {
        this.jobs = jobs;
        this.opener = opener;
        this.outlook = outlook;
    }

    /** @param seen the version the form was made from, or null where the job had no estimate of its own yet */
    @Transactional
    public void price(UUID job, @Nullable Integer seen, EstimateRates rates, UUID by) {
        jobs.holdOpen(job, by);
        Limits.check(rates);
        guardShares(rates);
        Estimate estimate = opener.open(job);
        if (!estimate.rates().equals(rates)) {
            if (!estimate.isAt(seen)) {
                throw new Stale("estimate", beside(estimate.rates(), rates));
            }
            estimate.price(rates);
        }
    }

    /**
     * With the rates, the confidence that the price is made at.
     *
     * @param confidence 50, 80 or 90; null for the named percentage
     */
    @Transactional
    public void price(UUID job, @Nullable Integer seen, EstimateRates rates, @Nullable Integer confidence, UUID by) {
        price(job, seen, rates, by);
        outlook.ifAvailable(one -> one.choose(job, confidence == null ? 0 : confidence, by));
    }

    /** Keeps the words of the next bid without issuing it. */
    @Transactional
    public void word(UUID job, @Nullable Integer seen, BidWords words, UUID by) {
        jobs.holdOpen(job, by);
        Estimate estimate = opener.open(job);
        if (!estimate.words().equals(words)) {
            if (!estimate.isAt(seen)) {
                throw new Stale("estimate", beside(estimate.words(), words));
            }
            estimate.word(words);
        }
    }

    private static void guardShares(EstimateRates rates) {
        Percent all = Percent.of(rates.crew().stream()
                .map(share -> share.sharePercent().amount())
                .reduce(BigDecimal.ZERO, BigDecimal::add));
        if (!rates.crew().isEmpty() && all.compareTo(Percent.of(100)) != 0) {
            throw new Refused("crew", "The shares add up to " + all + " %; make it 100.");
        }
    }

    private static List<Stale.Row> beside(EstimateRates theirs, EstimateRates yours) {
        return List.of(
                new Stale.Row("Rate by hand", rate(theirs.labourRate()), rate(yours.labourRate())),
                new Stale.Row("Shares", shares(theirs), shares(yours)),
                new Stale.Row("Overhead an hour", rate(theirs.overheadRate()), rate(yours.overheadRate())),
                new Stale.Row("Contingency", contingency(theirs), contingency(yours)),
                new Stale.Row("Margin", theirs.margin() + " %", yours.margin() + " %"),
                new Stale.Row("Round to", rate(theirs.roundingStep()), rate(yours.roundingStep())),
                new Stale.Row("Tax", theirs.taxPercent() + " %", yours.taxPercent() + " %"));
    }

    private static String rate(@Nullable Money rate) {
        return rate == null ? "none" : rate.toString();
    }

    private static String shares(EstimateRates rates) {
        return String.join(
                ", ",
                rates.crew().stream().map(share -> share.sharePercent() + " %").toList());
    }

    private static String contingency(EstimateRates rates) {
        return (rates.contingencyPercent() + " % " + rates.contingencyName()).strip();
    }

    private static List<Stale.Row> beside(BidWords theirs, BidWords yours) {
        return List.of(
                new Stale.Row("What is built", theirs.scope(), yours.scope()),
                new Stale.Row("Not included", theirs.exclusions(), yours.exclusions()),
                new Stale.Row("How it is paid", theirs.payments(), yours.payments()),
                new Stale.Row("Terms", theirs.terms(), yours.terms()));
    }
}
