package org.tallywright.shared;

import java.util.List;

/** Somebody else changed the thing after it was opened (status 409). Nothing was overwritten. */
public final class Stale extends Problem {
    private final String what;
    private final List<Row> rows;

    /** @param what the thing in the shop's words, such as "time entry" */
    public Stale(String what) {
        this(what, List.of());
    }

    /** @param rows both versions side by side, field by field; only what the reader may see */
    public Stale(String what, List<Row> rows) {
        super("Somebody changed this " + what + " while you had it open. Nothing was overwritten.");
        this.what = what;
        this.rows = List.copyOf(rows);
    }

    public String what() {
        return what;
    }

    public List<Row> rows() {
        return rows;
    }

    /** One field: as it is kept now, and as the refused save would have had it. */
    public record Row(String label, String theirs, String yours) {
        public boolean differs() {
            return !theirs.equals(yours);
        }
    }
}
