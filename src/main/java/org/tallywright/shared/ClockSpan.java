package org.tallywright.shared;

import java.time.LocalTime;
import java.time.temporal.ChronoUnit;

/** From one clock time to a later one on the same date; an end of 00:00 is the midnight that ends the day. */
public record ClockSpan(LocalTime start, LocalTime end) {
    public ClockSpan {
        start = start.truncatedTo(ChronoUnit.MINUTES);
        end = end.truncatedTo(ChronoUnit.MINUTES);
        if (endMinute(end) <= minute(start)) {
            throw new NotUnderstood(
                    start + " to " + end + " ends before it starts; log the time after midnight on its own date.");
        }
    }

    public Hours hours() {
        return new Hours(endMinute(end) - minute(start));
    }

    /** Touching spans do not overlap. */
    public boolean overlaps(ClockSpan other) {
        return minute(start) < endMinute(other.end) && minute(other.start) < endMinute(end);
    }

    private static int minute(LocalTime time) {
        return time.getHour() * 60 + time.getMinute();
    }

    private static int endMinute(LocalTime time) {
        int minute = minute(time);
        return minute == 0 ? Hours.DAY : minute;
    }

    @Override
    public String toString() {
        return start + " to " + end;
    }
}
