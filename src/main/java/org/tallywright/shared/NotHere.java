package org.tallywright.shared;

/** An unknown thing, or one that is not this person's to see; the two look the same from outside (status 404). */
public final class NotHere extends Problem {
    private final String what;

    /** @param what the thing in the shop's words, such as "job" */
    public NotHere(String what) {
        super("There is no such " + what + " here.");
        this.what = what;
    }

    public String what() {
        return what;
    }
}
