package org.tallywright.shared;

import java.math.BigDecimal;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one hours box came to: a length of time, or clock ranges, or several of either joined by {@code +}, {@code and}
 * or {@code &} ({@code 8-12 + 12:30-4}). Joined parts are one entry with the sum of their minutes; ranges and lengths are
 * not mixed, so that an entry either says when or does not.
 *
 * @param hours above nothing, at most 24 hours
 * @param spans the clock ranges in the order typed, none overlapping; empty where a length of time was given
 * @param note what was rounded, or null
 */
public record LoggedTime(
        Hours hours, List<ClockSpan> spans, @Nullable String note) {
    public LoggedTime {
        spans = List.copyOf(spans);
    }

    /**
     * Reads everything {@link Hours#parse} reads, and {@code 8-12}, {@code 8:00-12:15}, {@code 7:30am-noon},
     * {@code 1pm-3:30pm}.
     *
     * @throws NotUnderstood with a sentence for the person who typed it
     */
    public static LoggedTime parse(String typed) {
        String tidy = Decimals.tidy(typed);
        if (tidy.length() > 120) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" is too long for an hours box.");
        }
        List<ClockSpan> spans = new ArrayList<>();
        Hours total = Hours.ZERO;
        String note = null;
        String[] parts = joined(tidy);
        for (String part : parts) {
            ClockSpan span = ClockRanges.read(part, typed).orElse(null);
            if (span == null) {
                Durations.Read read = Durations.read(part, Hours.DAY);
                total = total.plus(read.hours());
                note = read.note() == null ? note : read.note();
            } else {
                refuseOverlap(spans, span);
                spans.add(span);
                total = total.plus(span.hours());
            }
        }
        if (!spans.isEmpty() && spans.size() < parts.length) {
            throw new NotUnderstood("Write clock times or lengths of time in one box, not both.");
        }
        if (total.minutes() > Hours.DAY) {
            throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" adds up to more than a day.");
        }
        return new LoggedTime(total, spans, note);
    }

    /** "and" inside "2 h and 30 min" belongs to the one duration. */
    private static String[] joined(String tidy) {
        return tidy.matches("\\d{1,6} ?h.* and \\d{1,2} ?m.*")
                ? new String[] {tidy}
                : tidy.split(" ?(?:\\+|&|\\band\\b) ?", -1);
    }

    private static void refuseOverlap(List<ClockSpan> spans, ClockSpan next) {
        for (ClockSpan earlier : spans) {
            if (earlier.overlaps(next)) {
                throw new NotUnderstood(earlier + " and " + next + " overlap.");
            }
        }
    }

    /** The start, where exactly one clock range was given. */
    public @Nullable LocalTime start() {
        return spans.size() == 1 ? spans.get(0).start() : null;
    }

    /** The end, where exactly one clock range was given; 00:00 is the end of the day. */
    public @Nullable LocalTime end() {
        return spans.size() == 1 ? spans.get(0).end() : null;
    }

    /** How it was read, for the preview beside the box: {@code 4 h 15 (08:00 to 12:15)}. */
    public String understood() {
        List<String> asides =
                new ArrayList<>(spans.stream().map(ClockSpan::toString).toList());
        if (note != null) {
            asides.add(note);
        }
        return asides.isEmpty() ? hours.toString() : hours + " (" + String.join(", ", asides) + ")";
    }

    /** The text {@link #parse} reads back as the same minutes and spans. */
    public String typed() {
        if (spans.isEmpty()) {
            return hours.toString();
        }
        return String.join(" + ", spans.stream().map(LoggedTime::clock).toList());
    }

    private static String clock(ClockSpan span) {
        return span.start() + "-"
                + (span.end().equals(LocalTime.MIDNIGHT) ? "24:00" : span.end().toString());
    }

    /** Decimal hours to four places, for sums and exports. */
    public BigDecimal decimal() {
        return hours.decimal();
    }
}
