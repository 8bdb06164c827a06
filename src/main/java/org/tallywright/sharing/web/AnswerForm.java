package org.tallywright.sharing.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.Ticks;

/**
 * A client's yes or no to one bid, as typed.
 *
 * @param bid which of the papers on the page it answers, or null
 * @param options ids of those that he ticked
 * @param oneOf the same of those that exclude each other, one for each group
 */
record AnswerForm(
        @Nullable UUID bid,
        @Nullable String name,
        @Nullable String pick,
        @Nullable String reason,
        @Nullable List<String> options,
        @Nullable List<@Nullable String> oneOf) {
    static final AnswerForm BLANK = new AnswerForm(null, "", "", "", List.of(), List.of());

    AnswerForm to(UUID answered) {
        return new AnswerForm(answered, name, pick, reason, options, oneOf);
    }

    /** Only the form that was sent comes back as it was typed. */
    public String name(UUID paper) {
        return paper.equals(bid) ? SharingForm.text(name) : "";
    }

    public String pick(UUID paper) {
        return paper.equals(bid) ? SharingForm.text(pick) : "";
    }

    public String reason(UUID paper) {
        return paper.equals(bid) ? SharingForm.text(reason) : "";
    }

    public Ticks ticks() {
        return new Ticks(options, oneOf);
    }
}
