package org.tallywright.jobs.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.Finish;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.web.FormReader;

/**
 * How a task ended, as typed.
 *
 * @param answer counted, uncounted or never (needed)
 */
record CompletionForm(@Nullable Integer version, String quantity, String doneOn, String doneAt, String answer) {
    static final String NEVER = "never";
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", java.util.Locale.ROOT);

    CompletionForm {
        quantity = Texts.of(quantity);
        doneOn = Texts.of(doneOn);
        doneAt = Texts.of(doneAt);
        answer = Texts.of(answer);
    }

    static CompletionForm blank(int version, Quantity planned, ShopClock clock) {
        ZonedDateTime now = clock.wallTime();
        return new CompletionForm(version, planned.toString(), now.toLocalDate().toString(), now.format(TIME), "");
    }

    @Nullable
    Finish read(FormReader read, ShopClock clock) {
        Quantity much = read.field("quantity", () -> Quantity.of(quantity));
        LocalDate on = read.field("doneOn", () -> Reader.day(doneOn));
        LocalTime at = read.field("doneAt", () -> Reader.time(doneAt));
        return much == null || on == null || at == null
                ? null
                : new Finish(much, !answer.equals("uncounted"), moment(on, at, clock));
    }

    /** The task as it stands now beside what was typed; a task that is not done has no day of its own. */
    List<Stale.Row> beside(TaskPage theirs) {
        JobPageRows.TaskRow kept = theirs.task();
        Quantity much = kept.quantityDone() == null ? kept.quantity() : kept.quantityDone();
        String on = kept.doneOn() == null ? "" : kept.doneOn().toString();
        return List.of(
                new Stale.Row("State", theirs.line().state().text(), "Done"),
                new Stale.Row("Quantity", much.toString(), quantity),
                new Stale.Row("Done on", on, (doneOn + " " + doneAt).strip()));
    }

    /** The minute that is now is not in the future. */
    private static Instant moment(LocalDate on, LocalTime at, ShopClock clock) {
        return on.atTime(at).atZone(clock.zone()).toInstant();
    }
}
