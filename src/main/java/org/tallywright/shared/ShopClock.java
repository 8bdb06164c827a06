package org.tallywright.shared;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.function.Supplier;

/** The shop's day: instants from the injected clock, dates in the shop's own time zone, asked for each time. */
public class ShopClock {
    private final Clock clock;
    private final Supplier<ZoneId> zone;

    public ShopClock(Clock clock, Supplier<ZoneId> zone) {
        this.clock = clock;
        this.zone = zone;
    }

    public LocalDate today() {
        return dateOf(now());
    }

    public Instant now() {
        return clock.instant();
    }

    /** Now, as the clock on the shop's wall shows it. */
    public ZonedDateTime wallTime() {
        return now().atZone(zone());
    }

    /** The shop's date at that instant. */
    public LocalDate dateOf(Instant instant) {
        return instant.atZone(zone()).toLocalDate();
    }

    /** The first instant of that date in the shop. */
    public Instant startOf(LocalDate date) {
        return date.atStartOfDay(zone()).toInstant();
    }

    public ZoneId zone() {
        return zone.get();
    }
}
