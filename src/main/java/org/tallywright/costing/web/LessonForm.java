package org.tallywright.costing.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.costing.Reviews;

/** What was learnt, as typed. */
record LessonForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String lesson) {

    static LessonForm of(Reviews.Closed review) {
        return new LessonForm(review.id(), review.version(), review.lesson());
    }

    String typed() {
        String text = lesson;
        return text == null ? "" : text;
    }
}
