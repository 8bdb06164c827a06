package org.tallywright;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.springframework.context.annotation.Primary;

/** The application's clock in tests: stands at {@link #START} until a test moves it. */
@Primary
public class TestClock extends Clock {
    /** A Wednesday, 13:40 on the east coast of North America. */
    public static final Instant START = Instant.parse("2026-11-25T18:40:00Z");

    private volatile Instant now = START;

    public void reset() {
        now = START;
    }

    public void set(Instant instant) {
        now = instant;
    }

    public void advance(Duration step) {
        now = now.plus(step);
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return new Clock() {
            @Override
            public Instant instant() {
                return TestClock.this.instant();
            }

            @Override
            public ZoneId getZone() {
                return zone;
            }

            @Override
            public Clock withZone(ZoneId other) {
                return TestClock.this.withZone(other);
            }
        };
    }
}
