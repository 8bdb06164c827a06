package org.tallywright.learning;

import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.Forecaster;
import org.tallywright.shared.ShopClock;

/** The forecast of a running job today, and what moved it since a week ago, both with the calibration in use. */
@Service
public class JobForecasts {
    private static final int WEEK = 7;

    private final Forecaster forecaster;
    private final ShopClock clock;

    JobForecasts(Forecaster forecaster, ShopClock clock) {
        this.forecaster = forecaster;
        this.clock = clock;
    }

    /** @param moved null where nothing was finished or logged by then */
    public record Now(Forecaster.Running running, @Nullable Movement moved) {}

    @Transactional(readOnly = true)
    public Optional<Now> of(UUID job) {
        return forecaster.running(job, clock.today()).map(now -> {
            Movement moved = forecaster
                    .running(job, clock.today().minusDays(WEEK))
                    .filter(then -> then.soFar() > 0)
                    .map(then -> Movement.between(then, now))
                    .orElse(null);
            return new Now(now, moved);
        });
    }
}
