package org.tallywright.sharing.web;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/**
 * A client's yes or no to one bid, as typed.
 *
 * @param bid which of the papers on the page it answers, or null
 * @param options ids of those that he ticked
 */
record AnswerForm(
        @Nullable UUID bid,
        @Nullable String name,
        @Nullable String pick,
        @Nullable String reason,
        @Nullable List<String> options) {
    static final AnswerForm BLANK = new AnswerForm(null, "", "", "", List.of());

    AnswerForm to(UUID answered) {
        return new AnswerForm(answered, name, pick, reason, options);
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

    public boolean ticked(UUID option) {
        return options != null && options.contains(option.toString());
    }

    Set<UUID> chosen() {
        Set<UUID> chosen = new HashSet<>();
        try {
            for (String option : options == null ? List.<String>of() : options) {
                chosen.add(UUID.fromString(option));
            }
        } catch (IllegalArgumentException notAnId) {
            throw new Refused("Tick options of this bid only.");
        }
        return chosen;
    }
}
