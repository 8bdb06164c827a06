package org.tallywright.daylog;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Something unlikely that may still be right; it is asked once.
 *
 * @param key the question and the figures it is about, so that other figures are asked about anew
 * @param row the row it is about, or null for the whole day
 * @param offer what could be done instead, or null
 */
public record Question(
        String key,
        @Nullable UUID row,
        String sentence,
        @Nullable Offer offer) {
    Question(String key, @Nullable UUID row, String sentence) {
        this(key, row, sentence, null);
    }

    /**
     * One tap that puts it right.
     *
     * @param act what the day sheet does: {@code hours:<row>:<minutes>} or {@code travel:<job>:<minutes>}
     */
    public record Offer(String label, String act) {}
}
