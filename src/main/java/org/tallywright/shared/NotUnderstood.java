package org.tallywright.shared;

/** Typed words that are not the value asked for. Shown beside the box they were typed in (status 422). */
public final class NotUnderstood extends Problem {
    public NotUnderstood(String sentence) {
        super(sentence);
    }

    /** The same sentence, tied to a field of a form. */
    public Refused at(String field) {
        return new Refused(field, sentence());
    }
}
