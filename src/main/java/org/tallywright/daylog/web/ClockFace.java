package org.tallywright.daylog.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The clock as one's own day sheet shows it. On another person's sheet it is not there.
 *
 * @param own whether this is the sheet of who looks
 * @param starts whether it can be started here: today, in a week that is open
 * @param id of the next run
 * @param seen what runs, believed or not, or null
 * @param problem why the last act on it was refused, or null
 * @param runs what runs and is believed, or null
 * @param asks clocks whose end only the person knows
 * @param offers by the box of the row they stand beside
 * @param others offers without a row
 * @param days other days whose offers wait
 * @param takes offers put into rows of this page and not saved yet
 * @param key what runs, as the rows' {@code what} and hour class
 */
record ClockFace(
        boolean own,
        boolean starts,
        UUID id,
        @Nullable UUID seen,
        @Nullable String problem,
        @Nullable Running runs,
        List<Ask> asks,
        Map<String, Offer> offers,
        List<Offer> others,
        List<Day> days,
        List<String> takes,
        String key) {

    /** @param seconds so far, for the script that lets it tick */
    record Running(UUID id, String title, String since, String soFar, long seconds) {}

    /**
     * A clock that was forgotten.
     *
     * @param runs whether it still goes
     * @param believable whether its day is not over, so that the person may still be at it
     */
    record Ask(UUID run, String sentence, boolean runs, boolean believable, String typed) {}

    /**
     * @param take the act that puts it in, or null where the day stands still
     * @param first the run that stands for all
     */
    record Offer(String title, String hours, @Nullable String take, UUID first) {}

    record Day(String label, String href) {}

    public boolean shown() {
        return problem != null || runs != null || !asks.isEmpty() || !others.isEmpty() || !days.isEmpty();
    }

    public @Nullable Offer beside(String box) {
        return offers.get(box);
    }

    /** Whether the clock runs on what that row is about. */
    public boolean on(RowForm row) {
        return !key.isEmpty() && key.equals(row.what() + " " + row.hourClass());
    }

    /** The words of a row's start button: a key of the messages. */
    public String start(String box) {
        return offers.containsKey(box) ? "on" : runs != null ? "switch" : "start";
    }
}
