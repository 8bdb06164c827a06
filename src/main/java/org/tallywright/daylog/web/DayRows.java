package org.tallywright.daylog.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.daylog.Conflict;
import org.tallywright.daylog.Entry;
import org.tallywright.daylog.LateDays;
import org.tallywright.daylog.LikelyTask;
import org.tallywright.daylog.Objection;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Question;
import org.tallywright.daylog.Target;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.LoggedTime;
import org.tallywright.shared.NotUnderstood;

/** The rows of one page, with their errors by box. */
final class DayRows {
    private final DayForm form;
    private final DayPages.Back back;
    private final Map<Target, Place> known;
    private final Map<UUID, Entry> stored = new HashMap<>();
    private final Map<Target, Integer> soFar = new HashMap<>();
    private final Map<Target, String> why = new HashMap<>();
    private final Map<UUID, Map<String, String>> byRow = new HashMap<>();
    private final List<String> whole = new ArrayList<>();

    DayRows(
            DayForm form,
            DayPages.Back back,
            Map<Target, Place> known,
            List<Entry> entries,
            List<LikelyTask> likely,
            LocalDate date) {
        this.form = form;
        this.back = back;
        this.known = known;
        entries.forEach(entry -> stored.put(entry.id(), entry));
        entries.forEach(entry -> soFar.put(entry.content().target(), entry.soFar()));
        likely.forEach(task -> soFar.put(task.place().target(), task.soFar()));
        likely.forEach(task -> why.put(task.place().target(), DayWords.why(task, date)));
        Set<UUID> ids = form.rows().stream().map(RowForm::id).collect(Collectors.toSet());
        back.objections().forEach(objection -> {
            UUID row = objection.row() == null ? null : DayTyped.rowOf(objection.row(), ids);
            if (row == null || !ids.contains(row)) {
                whole.add(objection.sentence());
            } else {
                byRow.computeIfAbsent(row, id -> new LinkedHashMap<>())
                        .merge(objection.field(), objection.sentence(), (one, other) -> one + " " + other);
            }
        });
    }

    List<DayPage.Row> all() {
        List<DayPage.Row> rows = new ArrayList<>();
        for (int n = 0; n < form.rows().size(); n++) {
            rows.add(row("row." + n, form.rows().get(n)));
        }
        return rows;
    }

    private DayPage.Row row(String box, RowForm row) {
        Target target = DayPages.target(row.what());
        Place place = target == null ? null : known.get(target);
        Map<String, String> errors = byRow.getOrDefault(row.id(), Map.of());
        LineReader.Heard heard = back.heard().get(row.id());
        Conflict conflict = back.conflicts().stream()
                .filter(c -> c.row().equals(row.id()))
                .findFirst()
                .orElse(null);
        Set<UUID> own = Set.of(row.id());
        List<Question.Offer> offers = back.objections().stream()
                .filter(o -> o.offer() != null
                        && o.row() != null
                        && DayTyped.rowOf(o.row(), own).equals(row.id()))
                .map(Objection::offer)
                .toList();
        List<DayPage.Ask> asks = back.questions().stream()
                .filter(q -> q.row() != null && DayTyped.rowOf(q.row(), own).equals(row.id()))
                .map(q -> DayPages.ask(q))
                .toList();
        Entry entry = stored.get(row.id());
        return new DayPage.Row(
                box,
                conflict == null || conflict.now() == null
                        ? row
                        : row.withVersion(conflict.now().version()),
                place == null ? (row.pick() ? "" : "Not here any more") : place.name(),
                place == null ? "" : DayWords.aside(place, soFar.getOrDefault(target, 0)),
                state(row, errors, asks, conflict),
                heard == null ? null : heard.typed(),
                conflict == null ? null : DayWords.now(conflict.now()),
                perhaps(row, place, heard),
                open(row, place, errors),
                entry != null && LateDays.fromMemory(entry),
                errors,
                asks,
                offers,
                row.saved() || row.pick() || target == null ? "" : why.getOrDefault(target, ""));
    }

    private static String state(
            RowForm row, Map<String, String> errors, List<DayPage.Ask> asks, @Nullable Conflict conflict) {
        if (!errors.isEmpty() || conflict != null) {
            return "refused";
        }
        return asks.isEmpty() ? row.saved() ? "saved" : "" : "queued";
    }

    private static boolean open(RowForm row, @Nullable Place place, Map<String, String> errors) {
        String usual = place == null ? "direct" : place.usualClass().code();
        boolean typed = row.hourClass().equals(HourClass.REWORK.code())
                || !row.time().isBlank() && !row.hourClass().equals(usual)
                || !row.note().isEmpty()
                || !row.reason().isEmpty();
        // A saved row says in one line what its folded boxes hold, so that the day stays short on a phone.
        return typed && !row.saved() || errors.keySet().stream().anyMatch(Set.of("class", "note", "reason")::contains);
    }

    /** What the line may have meant, and what is chosen but not on the list that every row offers. */
    private static List<DayPage.Choices> perhaps(RowForm row, @Nullable Place place, LineReader.@Nullable Heard heard) {
        if (!row.pick()) {
            return List.of();
        }
        List<DayPage.Choices> first = new ArrayList<>();
        if (heard != null && !heard.perhaps().isEmpty()) {
            first.add(new DayPage.Choices(
                    "Perhaps", heard.perhaps().stream().map(DayChoices::inFull).toList()));
        } else if (place != null) {
            first.add(new DayPage.Choices("Chosen", List.of(DayChoices.inFull(place))));
        }
        return first;
    }

    Map<String, String> errors() {
        Map<String, String> errors = new LinkedHashMap<>();
        for (int n = 0; n < whole.size(); n++) {
            errors.put(n == 0 ? "" : " ".repeat(n), whole.get(n));
        }
        if (back.lineProblem() != null) {
            errors.put("line", back.lineProblem());
        }
        for (int n = 0; n < form.rows().size(); n++) {
            String box = "row." + n + ".";
            Map<String, String> ofRow = byRow.getOrDefault(form.rows().get(n).id(), Map.of());
            ofRow.forEach((field, sentence) -> errors.put(box + (field.isEmpty() ? "time" : field), sentence));
        }
        return errors;
    }

    Hours total() {
        int minutes = 0;
        for (RowForm row : form.rows()) {
            Entry entry = stored.get(row.id());
            if (entry != null && RowForm.of(entry).time().equals(row.time())) {
                minutes += entry.content().minutes();
            } else if (!row.time().isBlank()) {
                minutes += minutes(row.time());
            }
        }
        return Hours.ofMinutes(minutes);
    }

    private static int minutes(String typed) {
        try {
            return LoggedTime.parse(typed).hours().minutes();
        } catch (NotUnderstood e) {
            return 0;
        }
    }
}
