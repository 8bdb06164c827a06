package org.tallywright.learning;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.Forecaster;
import org.tallywright.shared.ShopClock;

/** The forecast of a running job today, and what moved it since what was said a week ago. */
@Service
public class JobForecasts {
    private static final int WEEK = 7;

    private final Forecaster forecaster;
    private final ShopClock clock;
    private final JdbcClient jdbc;

    JobForecasts(Forecaster forecaster, ShopClock clock, JdbcClient jdbc) {
        this.forecaster = forecaster;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /**
     * @param moved null where nothing was kept, finished or logged by then
     * @param reopened whether the job was closed once
     */
    public record Now(Forecaster.Running running, @Nullable Movement moved, boolean reopened) {}

    @Transactional(readOnly = true)
    public Optional<Now> of(UUID job) {
        LocalDate today = clock.today();
        LocalDate then = today.minusDays(WEEK);
        return forecaster
                .running(job, today)
                .map(now -> new Now(
                        now,
                        forecaster
                                .kept(job, then)
                                .map(kept -> since(job, kept, now))
                                .or(() -> workedOut(job, then, now))
                                .orElse(null),
                        wasClosed(job)));
    }

    private boolean wasClosed(UUID job) {
        return jdbc.sql(
                        "select exists (select 1 from job_event where job_id = ? and kind = 'job' and from_state = 'closed')")
                .param(job)
                .query(Boolean.class)
                .single();
    }

    private Movement since(UUID job, Forecaster.Kept kept, Forecaster.Running now) {
        return forecaster
                .running(job, clock.today(), kept)
                .map(same -> Movement.kept(kept, same, now, forecaster.isNewerThan(kept)))
                .orElseGet(() -> Movement.keptWithout(kept, now));
    }

    private Optional<Movement> workedOut(UUID job, LocalDate then, Forecaster.Running now) {
        return forecaster
                .running(job, then)
                .filter(was -> was.soFar() > 0)
                .map(was -> Movement.workedOut(then, was, now));
    }
}
