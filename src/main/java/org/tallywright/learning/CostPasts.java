package org.tallywright.learning;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.CostPast;
import org.tallywright.calibration.Forecaster;
import org.tallywright.materials.MaterialLedger;
import org.tallywright.materials.PaidPrices;
import org.tallywright.shared.ShopClock;

/**
 * What the shop's receipts, yields and crews up to yesterday say of money. Read once for each calibration and day, so that all of
 * a day's prices are made from the same.
 */
@Component
class CostPasts {
    private final Forecaster forecaster;
    private final MaterialLedger ledger;
    private final PaidPrices prices;
    private final ShopClock clock;
    private final JdbcClient jdbc;
    private final AtomicReference<@Nullable Kept> kept = new AtomicReference<>();

    CostPasts(Forecaster forecaster, MaterialLedger ledger, PaidPrices prices, ShopClock clock, JdbcClient jdbc) {
        this.forecaster = forecaster;
        this.ledger = ledger;
        this.prices = prices;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    private record Kept(UUID calibration, LocalDate day, CostPast past) {}

    CostPast today() {
        UUID calibration = forecaster.calibration().orElse(null);
        LocalDate day = clock.today();
        if (calibration == null) {
            return read(day);
        }
        Kept seen = kept.get();
        if (seen != null && seen.calibration().equals(calibration) && seen.day().equals(day)) {
            return seen.past();
        }
        CostPast past = read(day);
        kept.set(new Kept(calibration, day, past));
        return past;
    }

    private CostPast read(LocalDate day) {
        return CostPast.learn(
                ledger.finishedBefore(day),
                prices.stepsBefore(day).stream()
                        .map(step -> new CostPast.PriceSteps(step.material(), step.steps(), step.squares()))
                        .toList(),
                crews(day));
    }

    /** Jobs that several people were priced for, with what each of them really logged. */
    private List<CostPast.CrewHours> crews(LocalDate day) {
        return jdbc.sql("""
                        select c.job_id as job, c.person_id as person, c.share_percent as planned, coalesce(e.minutes, 0) as minutes
                        from estimate_crew c
                        join estimate s on s.job_id = c.job_id and s.labour_rate is null
                        join job j on j.id = c.job_id and j.state = 'closed' and j.closed_on < ?
                        left join (select job_id, person_id, sum(minutes) as minutes from time_entry group by job_id, person_id) e
                            on e.job_id = c.job_id and e.person_id = c.person_id
                        order by j.closed_on, c.job_id, c.person_id""").param(day).query(CostPast.CrewHours.class).list();
    }
}
