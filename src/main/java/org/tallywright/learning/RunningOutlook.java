package org.tallywright.learning;

import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.Forecaster;
import org.tallywright.calibration.RoundHours;
import org.tallywright.jobs.StickOutlook;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.stick.StickForecast;

/** The forecast on a running job's story stick; none where no task is open, for then nothing is left to forecast. */
@Component
class RunningOutlook implements StickOutlook {
    private final Forecaster forecaster;
    private final ShopClock clock;

    RunningOutlook(Forecaster forecaster, ShopClock clock) {
        this.forecaster = forecaster;
        this.clock = clock;
    }

    @Override
    public Optional<StickForecast> of(UUID jobId) {
        return forecaster
                .running(jobId, clock.today())
                .filter(now -> now.open() > 0)
                .map(now -> new StickForecast(
                        RoundHours.of(now.atEnd().low()),
                        RoundHours.of(now.atEnd().median()),
                        RoundHours.of(now.atEnd().high()),
                        now.jobs()));
    }
}
