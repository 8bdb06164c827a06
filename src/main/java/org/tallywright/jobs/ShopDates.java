package org.tallywright.jobs;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.springframework.stereotype.Component;
import org.tallywright.shared.ShopClock;

/** Days and moments in the words of a page, in the shop's own time. */
@Component
public class ShopDates {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter NEAR = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

    private final ShopClock clock;

    ShopDates(ShopClock clock) {
        this.clock = clock;
    }

    /** {@code Fri 11 Dec}, with the year where it is not this one. */
    public String day(LocalDate date) {
        return date.getYear() == clock.today().getYear() ? date.format(NEAR) : date.format(DAY);
    }

    /** {@code 16:10} today, {@code tomorrow 16:10}, {@code Thu 26 Nov, 16:10}. */
    public String moment(Instant instant) {
        ZonedDateTime at = instant.atZone(clock.zone());
        LocalDate today = clock.today();
        if (at.toLocalDate().equals(today)) {
            return at.format(TIME);
        }
        if (at.toLocalDate().equals(today.plusDays(1))) {
            return "tomorrow " + at.format(TIME);
        }
        return day(at.toLocalDate()) + ", " + at.format(TIME);
    }
}
