package org.tallywright.shared;

/** Something the shop asked for that was not done; the message is one plain sentence for the person who asked. */
public abstract sealed class Problem extends RuntimeException permits NotUnderstood, Refused, Stale, NotHere {
    protected Problem(String sentence) {
        super(sentence);
    }

    /** What to show, never empty. */
    public String sentence() {
        return String.valueOf(getMessage());
    }
}
