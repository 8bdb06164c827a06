package org.tallywright.learning;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.CostForecaster;
import org.tallywright.calibration.Forecaster;
import org.tallywright.calibration.HoursRange;
import org.tallywright.calibration.RoundHours;
import org.tallywright.estimates.CostBehind;
import org.tallywright.estimates.CostSaid;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.HoursOutlook;
import org.tallywright.estimates.HoursSaid;
import org.tallywright.estimates.LabourRate;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.Money;
import org.tallywright.shared.Quantity;

/** Forecasts an estimate's lines, and keeps the confidence at which a job's price is made. */
@Service
public class EstimateOutlook implements HoursOutlook {
    private final Forecaster forecaster;
    private final CostForecaster costs;
    private final CostPasts pasts;
    private final JobDesk jobs;
    private final JdbcClient jdbc;

    EstimateOutlook(Forecaster forecaster, CostForecaster costs, CostPasts pasts, JobDesk jobs, JdbcClient jdbc) {
        this.forecaster = forecaster;
        this.costs = costs;
        this.pasts = pasts;
        this.jobs = jobs;
        this.jdbc = jdbc;
    }

    @Override
    public HoursSaid of(UUID job, EstimateSheet lines) {
        Forecaster.Lines said = forecaster.tasks(ids(lines));
        Map<UUID, HoursSaid.Line> each = new LinkedHashMap<>();
        said.lines().forEach((task, line) -> {
            HoursRange hours = line.hours();
            each.put(
                    task,
                    new HoursSaid.Line(
                            RoundHours.of(hours.median()),
                            RoundHours.of(hours.low()),
                            RoundHours.of(hours.high()),
                            line.tasks(),
                            line.jobs()));
        });
        HoursRange all = said.total();
        HoursSaid.Total total = new HoursSaid.Total(
                RoundHours.of(all.median()),
                RoundHours.of(all.low()),
                RoundHours.of(all.high()),
                RoundHours.of(all.p80()),
                RoundHours.of(all.p90()),
                RoundHours.of(all.mean()));
        return new HoursSaid(each, total, said.jobs(), said.startingPercent(), confidence(job));
    }

    @Override
    public CostSaid cost(EstimateSheet lines, LabourRate hour, Money overhead, HoursSaid hours) {
        CostForecaster.Cost said = costs.of(
                ids(lines),
                new CostForecaster.Hour(hour.amount().orElse(Money.ZERO).amount(), crew(hour), overhead.amount()),
                lines.materials().stream().map(EstimateOutlook::need).toList(),
                lines.other().amount(),
                pasts.today());
        return new CostSaid(
                hours.total().mean(),
                Money.ofCents(said.materialCents()),
                said.cents(),
                new CostBehind(
                        said.cents().length,
                        said.seed(),
                        hours.jobs(),
                        hours.startingPercent(),
                        said.materials(),
                        said.yields(),
                        said.priceSteps(),
                        said.laidOut(),
                        said.crewMatters(),
                        said.crewJobs()));
    }

    /** A rate given by hand does not stray. */
    private static List<CostForecaster.Worker> crew(LabourRate hour) {
        return hour.byHand() != null
                ? List.of()
                : hour.parts().stream()
                        .map(part -> new CostForecaster.Worker(
                                part.person(),
                                part.share().amount(),
                                Objects.requireNonNull(part.burdened()).amount()))
                        .toList();
    }

    private static CostForecaster.Need need(EstimateSheet.MaterialRow line) {
        return new CostForecaster.Need(
                line.materialId(),
                line.net().quantity().amount(),
                line.yield().amount(),
                line.startingYield().amount(),
                line.purchaseStep().amount(),
                line.price().amount(),
                line.freight().amount(),
                laidOut(line));
    }

    private static CostForecaster.@Nullable LaidOut laidOut(EstimateSheet.MaterialRow line) {
        Quantity safe = line.safe();
        return safe == null
                ? null
                : new CostForecaster.LaidOut(
                        line.purchase().amount(), safe.amount(), line.covered().amount());
    }

    @Override
    public void issued(UUID bid, UUID job, EstimateSheet lines) {
        forecaster.keep(bid, job, confidence(job), ids(lines));
    }

    @Override
    public void agreed(UUID bid, Collection<UUID> tasks) {
        forecaster.keepAgreed(bid, tasks);
    }

    private static List<UUID> ids(EstimateSheet lines) {
        return lines.tasks().stream().map(EstimateSheet.TaskRow::id).toList();
    }

    private @Nullable Integer confidence(UUID job) {
        return jdbc.sql("select percent from price_confidence where id = ?")
                .param(job)
                .query(Integer.class)
                .optional()
                .orElse(null);
    }

    @Override
    @Transactional
    public void choose(UUID job, int percent, UUID by) {
        jobs.holdOpen(job, by);
        if (percent == 0) {
            jdbc.sql("delete from price_confidence where id = ?").param(job).update();
        } else {
            jdbc.sql("insert into price_confidence (id, percent) values (?, ?)"
                            + " on conflict (id) do update set percent = excluded.percent")
                    .params(job, percent)
                    .update();
        }
    }
}
