package org.tallywright.daylog.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.Entry;
import org.tallywright.daylog.LikelyTask;
import org.tallywright.daylog.Place;
import org.tallywright.shared.Hours;

/** Days, times and places in words and addresses. */
final class DayWords {
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter HEAD = DateTimeFormatter.ofPattern("EEE d", Locale.ENGLISH);
    private static final DateTimeFormatter MOMENT =
            DateTimeFormatter.ofPattern("EEE d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY_CLOCK = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private DayWords() {}

    static String day(LocalDate date) {
        return LONG.format(date);
    }

    static String shortDay(LocalDate date) {
        return SHORT.format(date);
    }

    /** For the head of a column: {@code Mon 23}. */
    static String headDay(LocalDate date) {
        return HEAD.format(date);
    }

    static String moment(Instant at, ZoneId zone) {
        return MOMENT.format(at.atZone(zone));
    }

    /** The clock time when it is today's, else with the day. */
    static String until(Instant at, ZonedDateTime now) {
        ZonedDateTime there = at.atZone(now.getZone());
        long days = there.toLocalDate().toEpochDay() - now.toLocalDate().toEpochDay();
        if (days == 0) {
            return CLOCK.format(there);
        }
        return days < 7 ? DAY_CLOCK.format(there) : SHORT.format(there);
    }

    static String href(LocalDate date, UUID person, UUID me) {
        return "/days/" + date + (person.equals(me) ? "" : "?person=" + person);
    }

    static String aside(Place place, int soFar) {
        StringBuilder words = new StringBuilder(place.number());
        if (!place.stage().isEmpty()) {
            words.append(" · ").append(place.stage());
        }
        if (place.target().taskId() != null) {
            words.append(" · ").append(place.jobTitle());
        }
        if (soFar > 0) {
            words.append(" · so far ").append(Hours.ofMinutes(soFar));
        }
        return words.toString();
    }

    /** Why a row is offered, in a word or two; empty for what is simply under way. */
    static String why(LikelyTask task, LocalDate date) {
        LocalDate last = task.lastOn();
        return switch (task.why()) {
            case PLANNED -> "planned for this day";
            case LAST_DAY ->
                last == null
                        ? ""
                        : last.equals(date.minusDays(1)) ? "worked on the day before" : "worked on " + shortDay(last);
            case READY -> "waited, ready now";
            case WEEKDAY -> "often on a " + date.getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
            case LEFT_OVER -> last == null ? "" : "was planned for " + shortDay(last);
            case YOURS -> "yours";
            case RECENT, UNDER_WAY -> "";
        };
    }

    /** What an entry says now, for the one who was about to change it. */
    static String now(@Nullable Entry entry) {
        if (entry == null) {
            return "taken off the day";
        }
        String words = RowForm.typed(entry.content().minutes(), entry.content().span()) + ", "
                + entry.content().hourClass().label().toLowerCase(Locale.ROOT) + ", "
                + entry.place().inWords();
        return entry.content().note().isEmpty()
                ? words
                : words + " (" + entry.content().note() + ")";
    }
}
