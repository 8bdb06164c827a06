package org.tallywright.daylog;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Why a day cannot be saved so.
 *
 * @param row the row it stands in, or null for the whole day
 * @param field the box of the row: what, time, class, note or reason
 * @param offer one tap that puts it right, or null
 */
public record Objection(@Nullable UUID row, String field, String sentence, Question.@Nullable Offer offer) {
    public Objection(@Nullable UUID row, String field, String sentence) {
        this(row, field, sentence, null);
    }
}
