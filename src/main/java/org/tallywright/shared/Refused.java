package org.tallywright.shared;

import org.jspecify.annotations.Nullable;

/** A rule of the trade or the shop says no (status 422). With a field it is shown beside it, without one on top. */
public final class Refused extends Problem {
    private final @Nullable String field;

    public Refused(@Nullable String field, String sentence) {
        super(sentence);
        this.field = field;
    }

    public Refused(String sentence) {
        this(null, sentence);
    }

    /** The name of the form's field, or null where the whole form is meant. */
    public @Nullable String field() {
        return field;
    }

    /** The same sentence beside another field, for forms that name it differently. */
    public Refused at(String otherField) {
        return new Refused(otherField, sentence());
    }
}
