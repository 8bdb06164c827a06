package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.EstimateSheet.BidRow;
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
    private final ObjectProvider<HoursOutlook> outlook;

    EstimatePricer(
            Estimates estimates,
            EstimateOpener opener,
            EstimateSheets sheets,
            People people,
            Wages wages,
            ShopClock clock,
            ObjectProvider<HoursOutlook> outlook) {
        this.estimates = estimates;
        this.opener = opener;
        this.sheets = sheets;
        this.people = people;
        this.wages = wages;
        this.clock = clock;
        this.outlook = outlook;
    }

    @Transactional(readOnly = true)
    public WorkingSum of(UUID job) {
        LocalDate today = clock.today();
        Optional<Estimate> estimate = estimates.findById(job);
        EstimateRates rates = estimate.map(Estimate::rates).orElseGet(opener::usualRates);
        EstimateSheet sheet = sheets.of(job, today);
        LabourRate hour = labourRate(rates, today);
        Draft draft = new Draft(
                job,
                estimate.map(Estimate::version).orElse(null),
                rates,
                estimate.map(Estimate::words).orElseGet(opener::usualWords),
                hour);
        List<OptionSum> options = sheet.options().stream()
                .filter(OptionRow::isOpen)
                .map(option -> new OptionSum(
                        option, sum(draft, sheet.option(option.id()).freed(), List.of(), List.of())))
                .filter(option -> !option.working().sheet().next().isEmpty())
                .toList();
        return sum(draft, sheet, sheets.bids(job, today), options);
    }

    /** What bid and options share. */
    private record Draft(UUID job, @Nullable Integer version, EstimateRates rates, BidWords words, LabourRate hour) {}

    private WorkingSum sum(Draft draft, EstimateSheet sheet, List<BidRow> bids, List<OptionSum> options) {
        HoursSaid said = said(draft.job(), sheet).orElse(null);
        CostSaid cost = said == null
                ? null
                : cost(sheet, draft.hour(), draft.rates().overheadRate(), said).orElse(null);
        return new WorkingSum(
                draft.version(), draft.rates(), draft.words(), draft.hour(), sheet, bids, said, cost, options);
    }

    /** The options of a job, decided ones too. */
    @Transactional(readOnly = true)
    public List<OptionRow> optionsOf(UUID job) {
        return sheets.options(job);
    }

    /**
     * What would be offered next at other rates and another confidence, kept nowhere.
     *
     * @param confidence 50, 80 or 90; null for the named percentage
     */
    @Transactional(readOnly = true)
    public WorkingSum tried(WorkingSum stands, EstimateRates rates, @Nullable Integer confidence) {
        Limits.check(rates);
        LabourRate hour = labourRate(rates, clock.today());
        HoursSaid said = stands.said() == null ? null : stands.said().pricedAt(confidence);
        return new WorkingSum(
                stands.version(),
                rates,
                stands.words(),
                hour,
                stands.sheet(),
                stands.bids(),
                said,
                said == null
                        ? null
                        : cost(stands.sheet(), hour, rates.overheadRate(), said).orElse(null),
                stands.options().stream()
                        .map(option -> new OptionSum(option.option(), tried(option.working(), rates, confidence)))
                        .toList());
    }

    private Optional<CostSaid> cost(EstimateSheet sheet, LabourRate hour, Money overhead, HoursSaid said) {
        HoursOutlook bean = outlook.getIfAvailable();
        return bean == null || hour.amount().isEmpty()
                ? Optional.empty()
                : Optional.of(bean.cost(sheet.next(), hour, overhead, said));
    }

    /** The lines alone, without rates or prices to the client. */
    @Transactional(readOnly = true)
    public EstimateSheet sheet(UUID job) {
        return sheets.of(job, clock.today());
    }

    /** What the shop's own past says of the hours that would be offered next; empty where there is no task. */
    @Transactional(readOnly = true)
    public Optional<HoursSaid> said(UUID job, EstimateSheet sheet) {
        EstimateSheet next = sheet.next();
        HoursOutlook bean = outlook.getIfAvailable();
        return bean == null || next.tasks().isEmpty() ? Optional.empty() : Optional.of(bean.of(job, next));
    }

    private LabourRate labourRate(EstimateRates rates, LocalDate today) {
        return new LabourRate(
                rates.labourRate(),
                rates.crew().stream()
                        .map(share -> new LabourRate.Part(
                                share.personId(),
                                people.named(share.personId()).name(),
                                share.sharePercent(),
                                wages.burdened(share.personId(), today)
                                        .map(Money::of)
                                        .orElse(null)))
                        .toList());
    }
}
