package org.tallywright.daylog;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a day's clock came to on one thing in one hour class, several runs summed. It stands beside the row until the person
 * puts it in or throws it away; nothing is logged by itself.
 *
 * @param runs at least one, in the order they began
 */
public record ClockOffer(List<ClockRun> runs) {
    public ClockOffer {
        runs = List.copyOf(runs);
    }

    /** The run that stands for all. */
    public ClockRun first() {
        return runs.get(0);
    }

    public int minutes() {
        return ClockRun.minutes(runs);
    }

    /** The offers of a person's open runs by day; what does not make half a minute is not offered. */
    public static Map<LocalDate, List<ClockOffer>> of(List<ClockRun> open) {
        Map<LocalDate, List<ClockOffer>> byDay = new TreeMap<>();
        List<ClockRun> left =
                new ArrayList<>(open.stream().filter(ClockRun::offered).toList());
        while (!left.isEmpty()) {
            ClockRun first = left.get(0);
            ClockOffer offer = new ClockOffer(left.stream().filter(first::alike).toList());
            left.removeAll(offer.runs());
            if (offer.minutes() > 0) {
                byDay.computeIfAbsent(first.date(), day -> new ArrayList<>()).add(offer);
            }
        }
        return byDay;
    }
}
