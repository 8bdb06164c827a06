package org.tallywright.shared;

import java.time.LocalTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Clock ranges as people write them. Without am or pm: an end that is not after its start is moved to the afternoon
 * ({@code 8-4} is 8:00 to 16:00); a start from 1 to 4 is an afternoon hour ({@code 1-3:30} is 13:00 to 15:30) unless
 * written with a leading zero ({@code 01:00-03:30}).
 */
final class ClockRanges {
    private static final String TIME = "(noon|midday|midnight|\\d{1,2}(?:[:.]\\d{2})?)";
    private static final String HALF = "(?: ?([ap])\\.?(?:m\\.?)?)?";
    private static final Pattern RANGE =
            Pattern.compile("(?:from )?" + TIME + HALF + " ?(?:-|to|till|til|until) ?" + TIME + HALF);

    private ClockRanges() {}

    static boolean looksLike(String tidy) {
        return RANGE.matcher(tidy).matches();
    }

    /** The span, or empty where the words are not a clock range at all. */
    static Optional<ClockSpan> read(String tidy, String typed) {
        Matcher m = RANGE.matcher(tidy);
        if (!m.matches()) {
            return Optional.empty();
        }
        Time start = Time.of(m.group(1), m.group(2), typed);
        Time end = Time.of(m.group(3), m.group(4), typed);
        return Optional.of(span(start, end));
    }

    private static ClockSpan span(Time start, Time end) {
        int to = end.minute == 0 && end.fixed ? Hours.DAY : end.minute;
        int from = start.minute;
        if (!start.fixed && end.half != null && end.half == 'p' && from < 12 * 60 && from + 12 * 60 < to) {
            from += 12 * 60;
        } else if (!start.fixed && end.half == null && from >= 60 && from < 5 * 60) {
            from += 12 * 60;
        }
        if (!end.fixed && to <= from && to < 12 * 60 && to + 12 * 60 > from) {
            to += 12 * 60;
        }
        return new ClockSpan(at(from), at(to));
    }

    private static LocalTime at(int minute) {
        return LocalTime.of(minute / 60 % 24, minute % 60);
    }

    /** @param fixed true where am, pm, a word or a leading zero leaves no doubt about the half of the day */
    private record Time(int minute, @Nullable Character half, boolean fixed) {
        static Time of(String words, @Nullable String half, String typed) {
            if (words.equals("noon") || words.equals("midday")) {
                return new Time(12 * 60, 'p', true);
            }
            if (words.equals("midnight")) {
                return new Time(0, null, true);
            }
            String[] parts = words.split("[:.]");
            int hour = Integer.parseInt(parts[0]);
            int minute = parts.length == 1 ? 0 : Integer.parseInt(parts[1]);
            if (minute > 59 || hour > 24 || hour == 24 && minute > 0 || half != null && (hour < 1 || hour > 12)) {
                throw new NotUnderstood("\"" + Decimals.shown(typed) + "\" holds a clock time that does not exist.");
            }
            if (half != null) {
                return new Time(hour % 12 * 60 + minute + (half.equals("p") ? 12 * 60 : 0), half.charAt(0), true);
            }
            boolean fixed = hour > 12 || hour == 0 || words.startsWith("0");
            return new Time(hour % 24 * 60 + minute, null, fixed);
        }
    }
}
