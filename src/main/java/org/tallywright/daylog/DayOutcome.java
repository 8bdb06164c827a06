package org.tallywright.daylog;

import java.util.List;

/** What became of a save. */
public sealed interface DayOutcome {
    /**
     * All rows are stored.
     *
     * @param changes what the save did; empty for a repeat
     * @param minutes the day's total afterwards
     */
    record Saved(List<Change> changes, int minutes) implements DayOutcome {}

    /** Nothing was stored. */
    record Held(List<Objection> objections, List<Question> questions, List<Conflict> conflicts) implements DayOutcome {}
}
