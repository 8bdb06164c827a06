package org.tallywright.daylog;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * What a day sheet asks for, laid beside what is stored: which rows are new, changed, emptied or only repeated, and which
 * cannot be told because the entry was changed elsewhere.
 */
public final class DayPlan {
    /** Said beside a row whose entry is no longer there; the page then gives the row a new id. */
    public static final String TAKEN_OFF =
            "These hours were taken off the day after this page was opened. Save once more to log them anew.";

    private static final String ELSEWHERE = "This row belongs to another day. Open that day to change it.";
    private static final String TWICE_HERE = "This row is on the page twice. Open the day afresh.";
    private static final String GONE = "This is not here any more. Choose something else.";

    final List<TypedRow> created = new ArrayList<>();
    final Map<TypedRow, Entry> changed = new LinkedHashMap<>();
    final List<Entry> removed = new ArrayList<>();
    final List<Objection> objections = new ArrayList<>();
    final List<Conflict> conflicts = new ArrayList<>();
    /** The day as it would be. */
    final List<DayChecks.Line> lines = new ArrayList<>();

    private final SaveDay day;
    private final Set<UUID> deleted;
    private final Map<Target, Place> places;
    private final Map<UUID, Entry> stored = new HashMap<>();
    private final Set<UUID> seen = new HashSet<>();

    DayPlan(SaveDay day, List<Entry> storedEntries, Set<UUID> deleted, Map<Target, Place> places) {
        this.day = day;
        this.deleted = deleted;
        this.places = places;
        storedEntries.forEach(entry -> stored.put(entry.id(), entry));
        day.rows().forEach(this::take);
        for (Entry entry : storedEntries) {
            if (ofThisDay(entry) && !seen.contains(entry.id())) {
                lines.add(DayChecks.Line.elsewhere(entry));
            }
        }
    }

    boolean changesNothing() {
        return created.isEmpty() && changed.isEmpty() && removed.isEmpty();
    }

    private void take(TypedRow row) {
        Entry entry = stored.get(row.id());
        boolean blank = row.content() == null && row.version() == null;
        if (blank) {
            return;
        }
        if (!seen.add(row.id())) {
            objections.add(new Objection(row.id(), "time", TWICE_HERE));
        } else if (entry == null) {
            takeUnknown(row);
        } else if (!ofThisDay(entry) && !(day.mayMove() && entry.personId().equals(day.person()))) {
            objections.add(new Objection(row.id(), "time", ELSEWHERE));
        } else {
            takeKnown(row, entry);
        }
    }

    private void takeUnknown(TypedRow row) {
        if (row.content() == null) {
            return; // Emptied before, here or elsewhere: a repeat.
        }
        if (deleted.contains(row.id()) || row.version() != null) {
            objections.add(new Objection(row.id(), "time", TAKEN_OFF));
        } else if (known(row)) {
            created.add(row);
            lines.add(DayChecks.Line.of(row, place(row), true));
        }
    }

    private void takeKnown(TypedRow row, Entry entry) {
        if (row.content() != null && row.content().equals(entry.content()) && ofThisDay(entry)) {
            lines.add(DayChecks.Line.of(row, entry.place(), false));
        } else if (row.version() == null || row.version() != entry.version()) {
            conflicts.add(new Conflict(row.id(), entry));
        } else if (row.content() == null) {
            removed.add(entry);
        } else if (known(row)) {
            changed.put(row, entry);
            lines.add(DayChecks.Line.of(row, place(row), true));
        }
    }

    private boolean known(TypedRow row) {
        if (row.content() != null && places.containsKey(row.content().target())) {
            return true;
        }
        objections.add(new Objection(row.id(), "what", GONE));
        return false;
    }

    /** Key of the question whether a saved entry is really to be taken off the day. */
    public static String removal(UUID entry, int version) {
        return DayChecks.removal(entry, version);
    }

    Place place(TypedRow row) {
        if (row.content() == null) {
            throw new IllegalArgumentException("an emptied row goes nowhere");
        }
        Place place = places.get(row.content().target());
        if (place == null) {
            throw new IllegalArgumentException("unknown target");
        }
        return place;
    }

    private boolean ofThisDay(Entry entry) {
        return entry.personId().equals(day.person()) && entry.date().equals(day.date());
    }
}
