package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class ShopClockTest {
    private final Clock clock = Clock.fixed(Instant.parse("2026-11-25T03:30:00Z"), ZoneOffset.UTC);

    @Test
    void takesTheDateOfTheShopAndNotOfTheServer() {
        AtomicReference<ZoneId> zone = new AtomicReference<>(ZoneId.of("America/New_York"));
        ShopClock shop = new ShopClock(clock, zone::get);
        assertThat(shop.today()).isEqualTo(LocalDate.of(2026, 11, 24));
        zone.set(ZoneId.of("Europe/Vienna"));
        assertThat(shop.today()).isEqualTo(LocalDate.of(2026, 11, 25));
        assertThat(shop.startOf(shop.today())).isEqualTo(Instant.parse("2026-11-24T23:00:00Z"));
        assertThat(shop.wallTime().getHour()).isEqualTo(4);
    }
}
