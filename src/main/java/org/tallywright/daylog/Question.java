package org.tallywright.daylog;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Something unlikely that may still be right; it is asked once. Most are quiet: the day is saved, and the question stands
 * beside it until it is answered. Only where a save might take something away or count it twice does it wait for the answer.
 *
 * @param key the question and the figures it is about, so that other figures are asked about anew
 * @param row the row it is about, or null for the whole day
 * @param offer what could be done instead, or null
 * @param holds whether nothing is saved before it is answered
 */
public record Question(
        String key,
        @Nullable UUID row,
        String sentence,
        @Nullable Offer offer,
        boolean holds) {
    Question(String key, @Nullable UUID row, String sentence) {
        this(key, row, sentence, null, false);
    }

    Question(String key, @Nullable UUID row, String sentence, @Nullable Offer offer) {
        this(key, row, sentence, offer, false);
    }

    static Question holding(String key, UUID row, String sentence) {
        return new Question(key, row, sentence, null, true);
    }

    /**
     * One tap that puts it right.
     *
     * @param act what the day sheet does: {@code hours:<row>:<minutes>}, {@code class:<row>:<hour class>}, {@code off:<row>},
     *     {@code travel:<job>:<minutes>} or {@code log:<task>}
     */
    public record Offer(String label, String act) {}
}
