package org.tallywright.daylog;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Locale;
import java.util.regex.Pattern;
import org.tallywright.shared.ClockSpan;
import org.tallywright.shared.LoggedTime;
import org.tallywright.shared.NotUnderstood;

/**
 * Reads the answer to "when did you stop?": a time ({@code 16:30}, {@code 4:30pm}, {@code noon}) or how long it was
 * ({@code 2h30}, {@code 45m}, {@code 2.5 h}), as the hours boxes of the sheet read them. A bare number could be either and
 * is asked about. An end that is not after the start is one of the afternoon.
 */
final class ClockEnd {
    private static final Pattern TIME =
            Pattern.compile("noon|midday|midnight|\\d{1,2}:\\d{2}( ?[ap]\\.?(m\\.?)?)?|\\d{1,2} ?[ap]\\.?(m\\.?)?");
    private static final Pattern BARE = Pattern.compile("\\d{1,2}");

    private final ZonedDateTime start;

    ClockEnd(Instant startedAt, ZoneId zone) {
        this.start = startedAt.atZone(zone);
    }

    /** @throws NotUnderstood with a sentence for the person who typed it */
    Instant read(String typed) {
        String text = typed.strip().toLowerCase(Locale.ROOT);
        if (text.isEmpty()) {
            throw new NotUnderstood("Say when you stopped, such as 16:30, or how long it was, such as 2h30.");
        }
        if (BARE.matcher(text).matches()) {
            throw new NotUnderstood(
                    "\"" + text + "\" may be a time or a length. Write " + text + ":00, or " + text + " h.");
        }
        if (TIME.matcher(text).matches()) {
            LocalTime from = start.toLocalTime();
            LoggedTime range = LoggedTime.parse(
                    String.format(Locale.ROOT, "%02d:%02d-%s", from.getHour(), from.getMinute(), text));
            return at(range.spans().get(0));
        }
        return start.toInstant()
                .plus(Duration.ofMinutes(LoggedTime.parse(text).hours().minutes()));
    }

    /** Where clocks are put back a time comes twice; the one after the start is meant. */
    private Instant at(ClockSpan span) {
        LocalDate day = start.toLocalDate();
        ZonedDateTime end = span.end().equals(LocalTime.MIDNIGHT)
                ? day.plusDays(1).atStartOfDay(start.getZone())
                : day.atTime(span.end()).atZone(start.getZone());
        return (end.isBefore(start) ? end.withLaterOffsetAtOverlap() : end).toInstant();
    }
}
