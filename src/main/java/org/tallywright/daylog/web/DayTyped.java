package org.tallywright.daylog.web;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.Content;
import org.tallywright.daylog.Objection;
import org.tallywright.daylog.Target;
import org.tallywright.daylog.TypedRow;
import org.tallywright.shared.ClockSpan;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.LoggedTime;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;

/** The rows of a day sheet as values, and what could not be read, box by box. */
final class DayTyped {
    final List<TypedRow> rows = new ArrayList<>();
    final List<Objection> objections = new ArrayList<>();

    DayTyped(List<RowForm> forms) {
        forms.forEach(this::read);
    }

    private void read(RowForm form) {
        if (!form.time().isBlank()) {
            readTimed(form);
        } else if (form.saved()) {
            rows.add(new TypedRow(form.id(), form.version(), null, ""));
        } else if (!(form.note().isBlank() && form.reason().isBlank())) {
            objections.add(new Objection(form.id(), "time", "Say how long it took, or empty the note."));
        }
    }

    private void readTimed(RowForm form) {
        LoggedTime time = box(form, "time", () -> LoggedTime.parse(form.time()));
        Target target = box(form, "what", () -> Target.of(form.what()));
        HourClass hourClass = box(form, "class", () -> HourClass.of(form.hourClass()));
        String note = box(form, "note", () -> Typed.line(form.note(), 500));
        String reason = box(form, "reason", () -> Typed.line(form.reason(), 300));
        if (time != null && target != null && hourClass != null && note != null && reason != null) {
            spread(form, time, new Content(target, hourClass, time.hours().minutes(), null, note, reason));
        }
    }

    private <T> @Nullable T box(RowForm form, String field, Supplier<T> value) {
        try {
            return value.get();
        } catch (NotUnderstood | Refused e) {
            objections.add(new Objection(form.id(), field, e.sentence()));
            return null;
        }
    }

    /** A box with several clock ranges becomes an entry for each; the ids of the later ones follow from the first. */
    private void spread(RowForm form, LoggedTime time, Content whole) {
        if (time.spans().isEmpty()) {
            add(form, 0, whole);
        }
        int n = 0;
        for (ClockSpan span : time.spans()) {
            add(form, n++, with(whole, span));
        }
    }

    private void add(RowForm form, int n, Content content) {
        boolean first = n == 0;
        rows.add(new TypedRow(
                first ? form.id() : part(form.id(), n), first ? form.version() : null, content, form.time()));
    }

    static UUID part(UUID id, int n) {
        return UUID.nameUUIDFromBytes((id + ":" + n).getBytes(StandardCharsets.UTF_8));
    }

    private static Content with(Content whole, ClockSpan span) {
        return new Content(
                whole.target(), whole.hourClass(), span.hours().minutes(), span, whole.note(), whole.reason());
    }

    /** Objections about a later part of a box belong to the row it was typed in. */
    static UUID rowOf(UUID id, Set<UUID> rows) {
        if (rows.contains(id)) {
            return id;
        }
        for (UUID row : rows) {
            for (int n = 1; n <= 8; n++) {
                if (part(row, n).equals(id)) {
                    return row;
                }
            }
        }
        return id;
    }
}
