package org.tallywright.calibration;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.calibration.engine.PastForecast;
import org.tallywright.shared.ShopClock;

/**
 * Keeps what is said of each running job at the end of a day on which something about it had changed: hours, tasks or the
 * calibration. Done after midnight in the shop, or at the next start, in the background; no page writes it, so a page may be asked
 * for as often as one likes. Days are the natural step: hours are logged by the day, and the question asked later is what was
 * said a week ago. The first one at about a quarter, a half and three quarters done is marked, to be judged when the job is closed.
 */
@Service
public class DaysEnd {
    private static final Logger LOG = LoggerFactory.getLogger(DaysEnd.class);
    private static final Duration OFTEN = Duration.ofMinutes(20);

    private final Shelf shelf;
    private final RunningLook look;
    private final RunningRows rows;
    private final Background background;
    private final TransactionTemplate transaction;
    private final ShopClock clock;

    DaysEnd(
            Shelf shelf,
            RunningLook look,
            RunningRows rows,
            Background background,
            TransactionTemplate transaction,
            ShopClock clock) {
        this.shelf = shelf;
        this.look = look;
        this.rows = rows;
        this.background = background;
        this.transaction = transaction;
        this.clock = clock;
    }

    @EventListener(ApplicationReadyEvent.class)
    void start() {
        background.later(this::keep);
        background.every(OFTEN, this::keep);
    }

    /** Keeps yesterday's, once; called again it finds nothing to do. */
    public void keep() {
        try {
            transaction.executeWithoutResult(status -> {
                if (calibrationIsOlderThanToday()) {
                    LocalDate day = clock.today().minusDays(1);
                    rows.runningWithout(day).forEach(job -> keep(job, day));
                }
                rows.forgetTheWayOfEndedJobs();
            });
        } catch (RuntimeException e) {
            LOG.warn("The forecasts of running jobs could not be kept; tried again later.", e);
        }
    }

    /** What a calibration of today would say was not said yesterday. */
    private boolean calibrationIsOlderThanToday() {
        Optional<Instant> made = shelf.kept().map(kept -> kept.row().madeAt());
        return made.isEmpty() || made.get().isBefore(clock.startOf(clock.today()));
    }

    private void keep(UUID job, LocalDate day) {
        look.at(job, day, shelf.fitted())
                .filter(now -> !rows.saysTheSame(job, now))
                .ifPresent(now -> {
                    OptionalInt stage = stage(now);
                    boolean first = stage.isPresent() && !rows.hasStage(job, stage.getAsInt());
                    rows.keep(job, day, now, first ? stage.getAsInt() : null, clock.now());
                });
    }

    /** 25, 50 or 75 where that share is passed and no other is nearer; nothing where no task is left. */
    private static OptionalInt stage(RunningLook.Look now) {
        double share = now.said().shareDone();
        if (now.open().isEmpty() || share < 0.25) {
            return OptionalInt.empty();
        }
        int passed = share >= 0.75 ? 75 : share >= 0.5 ? 50 : 25;
        return PastForecast.Stage.of(share) == PastForecast.Stage.of(passed / 100.0)
                ? OptionalInt.of(passed)
                : OptionalInt.empty();
    }
}
