package org.tallywright.daylog;

import java.time.Duration;
import java.time.Instant;
import org.tallywright.shared.ShopClock;

/**
 * When a clock counts as forgotten: past the midnight of the day it began on, or five hours after the person last said that
 * it runs rightly. Five hours are more than a morning and less than a day: common practice, no source.
 */
public final class ClockRule {
    /** How long a clock is believed without a word. */
    public static final Duration BELIEVED = Duration.ofHours(5);

    private ClockRule() {}

    public static boolean forgotten(ClockRun run, ShopClock clock) {
        return run.runs()
                && (pastItsDay(run, clock)
                        || clock.now().isAfter(run.confirmedAt().plus(BELIEVED)));
    }

    /** Whether midnight has passed since it began; nobody is still at it then, as far as this day goes. */
    public static boolean pastItsDay(ClockRun run, ShopClock clock) {
        return clock.today().isAfter(run.date());
    }

    /** The last moment at which it can have ended: now, the next start, or midnight. */
    static Instant latest(ClockRun run, ShopClock clock) {
        Instant end = run.endedAt() == null ? clock.now() : run.endedAt();
        Instant midnight = clock.startOf(run.date().plusDays(1));
        return end.isAfter(midnight) ? midnight : end;
    }
}
