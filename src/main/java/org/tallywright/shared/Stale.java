package org.tallywright.shared;

/** Somebody else changed the thing after it was opened (status 409). Nothing was overwritten. */
public final class Stale extends Problem {
    private final String what;

    /** @param what the thing in the shop's words, such as "time entry" */
    public Stale(String what) {
        super("Somebody changed this " + what + " while you had it open. Nothing was overwritten.");
        this.what = what;
    }

    public String what() {
        return what;
    }
}
