package org.tallywright.calibration;

import java.sql.Timestamp;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Typed;
import org.tallywright.trail.Trail;

/**
 * Makes a new calibration when the past has changed: asked for inside the changing transaction, made after it in the
 * background. Until it is done the one before stays in use; a failure leaves it in use too.
 */
@Service
public class Recalibration {
    private static final Logger LOG = LoggerFactory.getLogger(Recalibration.class);

    private final CalibrationRows rows;
    private final Shelf shelf;
    private final PastReader reader;
    private final Background background;
    private final TransactionTemplate transaction;
    private final JdbcClient jdbc;
    private final ShopClock clock;
    private final Trail trail;
    private final AtomicReference<@Nullable Took> took = new AtomicReference<>();

    Recalibration(
            CalibrationRows rows,
            Shelf shelf,
            PastReader reader,
            Background background,
            TransactionTemplate transaction,
            JdbcClient jdbc,
            ShopClock clock,
            Trail trail) {
        this.rows = rows;
        this.shelf = shelf;
        this.reader = reader;
        this.background = background;
        this.transaction = transaction;
        this.jdbc = jdbc;
        this.clock = clock;
        this.trail = trail;
    }

    /** @param why in a few words, to stand beside the new calibration */
    @Transactional
    public void ask(String why) {
        rows.ask(why, clock.now());
        TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
            @Override
            public void afterCommit() {
                background.later(Recalibration.this::work);
            }
        });
    }

    /**
     * Takes up what was left at the last stop; a shop with finished jobs and no calibration gets its first, one whose kept
     * forecasts were never judged has them judged, and one whose calibrations are all of an older program gets one of this.
     */
    @EventListener(ApplicationReadyEvent.class)
    void start() {
        Boolean first = jdbc.sql("select not exists (select 1 from calibration) and exists"
                        + " (select 1 from job where state = 'closed')")
                .query(Boolean.class)
                .single();
        Boolean unjudged = jdbc.sql(
                        "select not exists (select 1 from calibration where jsonb_path_exists(record, '$[*].atBid'))"
                                + " and exists (select 1 from bid_forecast f join bid b on b.id = f.bid_id join job j on j.id = f.job_id"
                                + " where j.state = 'closed' and b.state = 'accepted' and not exists"
                                + " (select 1 from job_left_out l where l.job_key = j.id::text))")
                .query(Boolean.class)
                .single();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("update calibration set started_at = to_timestamp(0) where state = 'running'")
                    .update();
            if (first) {
                rows.ask("First calibration of this shop", clock.now());
            }
            if (rows.hasAny() && !rows.hasOneOfThisEngine()) {
                rows.ask("The program was renewed and works some things out in another way", clock.now());
            }
            if (unjudged) {
                rows.ask("Forecasts kept with bids are judged from now on", clock.now());
            }
        });
        background.later(this::work);
    }

    /** Nothing more is learnt from that job. */
    @Transactional
    public void leaveOut(String jobKey, String reason, UUID by) {
        String why = why(reason);
        String number = number(jobKey);
        trail.by(by);
        int added = jdbc.sql("""
                        insert into job_left_out (id, job_key, reason, left_by, left_at) values (?, ?, ?, ?, ?)
                        on conflict (job_key) do nothing""")
                .params(Ids.next(), jobKey, why, by, Timestamp.from(clock.now()))
                .update();
        if (added > 0) {
            ask("Job " + number + " left out: " + why);
        }
    }

    private static String why(String typed) {
        try {
            String why = Typed.line(typed, 300);
            if (why.isEmpty()) {
                throw new Refused("Say why, so that somebody can follow it later.");
            }
            return why;
        } catch (Refused refused) {
            throw refused.at("reason");
        }
    }

    /** It is learnt from again. */
    @Transactional
    public void takeBack(String jobKey, UUID by) {
        String number = number(jobKey);
        trail.by(by);
        int gone = jdbc.sql("delete from job_left_out where job_key = ?")
                .param(jobKey)
                .update();
        if (gone > 0) {
            ask("Job " + number + " counts again");
        }
    }

    private String number(String jobKey) {
        return reader.everything().jobs().stream()
                .filter(job -> job.key().equals(jobKey))
                .map(PastJob::number)
                .findFirst()
                .orElseThrow(() -> new NotHere("job"));
    }

    /** Uses an earlier calibration as it was, until the next one is made. */
    @Transactional
    public void use(UUID id, UUID by) {
        trail.by(by);
        CalibrationRows.Row row = rows.row(id).orElseThrow(() -> new NotHere("calibration"));
        if (!row.state().equals("done")) {
            throw new Refused("This calibration was never finished.");
        }
        rows.use(id);
    }

    /** Makes all that were asked for. Called in the background. */
    public void work() {
        try {
            while (workOnce()) {
                LOG.debug("one calibration made");
            }
        } catch (RuntimeException e) {
            LOG.warn("The calibration could not be made; the one before stays in use.", e);
        }
    }

    private boolean workOnce() {
        Optional<UUID> claimed = transaction.execute(status -> rows.claim(clock.now()));
        if (claimed.isEmpty()) {
            return false;
        }
        UUID id = claimed.get();
        try {
            make(id);
        } catch (RuntimeException e) {
            LOG.warn("The calibration could not be made; the one before stays in use.", e);
            transaction.executeWithoutResult(status -> rows.fail(id, "It could not be made; see the log."));
        }
        return true;
    }

    /** Seconds on the clock that the newest calibration of this server took, by stage. */
    public record Took(double read, double lookBack, double fit, double keep) {
        public double all() {
            return read + lookBack + fit + keep;
        }
    }

    /** Empty before this server has made one. */
    public Optional<Took> took() {
        return Optional.ofNullable(took.get());
    }

    private void make(UUID id) {
        long start = System.nanoTime();
        Past past = reader.read();
        String known = rows.current()
                .flatMap(rows::row)
                .map(CalibrationRows.Row::fingerprint)
                .orElse("");
        String fingerprint = rows.fingerprint(past);
        if (fingerprint.equals(known)) {
            transaction.executeWithoutResult(status -> rows.forget(id));
            return;
        }
        long read = System.nanoTime();
        step(id, "Looking back at finished jobs");
        List<Judged> record = lookBack(id, past);
        long looked = System.nanoTime();
        step(id, "Working out the rates");
        Fitted now = Fitted.of(id, past, clock.today(), record);
        Figures figures = now.figures();
        long fitted = System.nanoTime();
        transaction.executeWithoutResult(status -> {
            rows.keep(id, past, fingerprint, figures, record, clock.now());
            rows.prune();
        });
        rows.row(id).ifPresent(row -> shelf.put(now, new CalibrationRows.Kept(row, past, figures, record)));
        took.set(new Took(
                seconds(start, read),
                seconds(read, looked),
                seconds(looked, fitted),
                seconds(fitted, System.nanoTime())));
        LOG.debug("calibration made: {}", took.get());
    }

    /** What was judged by the same engine from the same past is not judged again. */
    private List<Judged> lookBack(UUID id, Past past) {
        CalibrationRows.Kept before = shelf.kept()
                .filter(kept -> Objects.equals(kept.figures().engine(), Fitted.ENGINE))
                .orElse(null);
        return before == null
                ? LookBack.record(past, Past.nothing(), List.of(), step -> step(id, step))
                : LookBack.record(past, before.past(), before.record(), step -> step(id, step));
    }

    private static double seconds(long from, long to) {
        return (to - from) / 1e9;
    }

    private void step(UUID id, String step) {
        transaction.executeWithoutResult(status -> rows.step(id, step));
    }
}
