package org.tallywright.estimates;

import java.util.Set;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;

/**
 * Why a client said no.
 *
 * @param pick one of {@link #PICKS}, or empty
 * @param words his own, or empty
 */
public record Refusal(String pick, String words) {
    /** In the order of the list. */
    public static final Set<String> PICKS = java.util.Collections.unmodifiableSet(
            new java.util.LinkedHashSet<>(java.util.List.of("price", "dates", "work", "elsewhere", "later")));

    public static final Refusal WITHOUT_REASON = new Refusal("", "");
    private static final int MOST = 2000;

    /** @throws Refused for a pick that is not in the list, and for words that are too long */
    public static Refusal of(String pick, String words) {
        if (!pick.isEmpty() && !PICKS.contains(pick)) {
            throw new Refused("pick", "Pick a reason of the list, or none.");
        }
        try {
            return new Refusal(pick, Typed.block(words, MOST));
        } catch (Refused refused) {
            throw refused.at("reason");
        }
    }

    boolean isEmpty() {
        return pick.isEmpty() && words.isEmpty();
    }
}
