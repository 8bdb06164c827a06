package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.people.People;
import org.tallywright.people.Wages;
import org.tallywright.shared.Money;
import org.tallywright.shared.ShopClock;

/** Reads a job's working sum and prices what would be offered next. */
@Service
public class EstimatePricer {
    private final Estimates estimates;
    private final EstimateOpener opener;
    private final EstimateSheets sheets;
    private final People people;
    private final Wages wages;
    private final ShopClock clock;

    EstimatePricer(
            Estimates estimates,
            EstimateOpener opener,
            EstimateSheets sheets,
            People people,
            Wages wages,
            ShopClock clock) {
        this.estimates = estimates;
        this.opener = opener;
        this.sheets = sheets;
        this.people = people;
        this.wages = wages;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public WorkingSum of(UUID job) {
        LocalDate today = clock.today();
        Optional<Estimate> estimate = estimates.findById(job);
        EstimateRates rates = estimate.map(Estimate::rates).orElseGet(opener::usualRates);
        return new WorkingSum(
                estimate.map(Estimate::version).orElse(null),
                rates,
                estimate.map(Estimate::words).orElseGet(opener::usualWords),
                labourRate(rates, today),
                sheets.of(job, today),
                sheets.bids(job, today));
    }

    /** The lines alone, without rates or prices to the client. */
    @Transactional(readOnly = true)
    public EstimateSheet sheet(UUID job) {
        return sheets.of(job, clock.today());
    }

    private LabourRate labourRate(EstimateRates rates, LocalDate today) {
        return new LabourRate(
                rates.labourRate(),
                rates.crew().stream()
                        .map(share -> new LabourRate.Part(
                                people.named(share.personId()).name(),
                                share.sharePercent(),
                                wages.burdened(share.personId(), today)
                                        .map(Money::of)
                                        .orElse(null)))
                        .toList());
    }
}
