package org.tallywright.daylog.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.tallywright.daylog.DayOutcome;
import org.tallywright.daylog.DayPlan;
import org.tallywright.daylog.DayReads;
import org.tallywright.daylog.LikelyTask;
import org.tallywright.daylog.Objection;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Target;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;

/**
 * What the buttons of the day sheet do before anything is saved. Each works without script: the sheet comes back with all
 * that was typed and one thing more.
 */
@Component
class DayActs {
    private final DayReads reads;
    private final DayChoices choices;

    DayActs(DayReads reads, DayChoices choices) {
        this.reads = reads;
        this.choices = choices;
    }

    /**
     * A form after its button.
     *
     * @param shown what the page shows beside it; null when it is to be saved now
     */
    record Done(DayForm form, DayPages.@Nullable Back shown, HttpStatus status) {}

    Done apply(DayForm form, DayPages.Sheet sheet) {
        String[] act = form.act().split(":", 3);
        return switch (act[0]) {
            case "", "save" -> toSave(form, sheet);
            case "read" -> heard(form, sheet, HttpStatus.OK);
            case "add" -> shown(form.withRows(plus(form, RowForm.toPick())), true);
            case "again" -> shown(form.withRows(again(form, uuid(act))), false);
            case "hours" -> toSave(form.withRows(withHours(form, uuid(act), minutes(act))), sheet);
            case "class" -> toSave(form.withRows(withClass(form, uuid(act), act[act.length - 1])), sheet);
            case "off" -> toSave(off(form, uuid(act)), sheet);
            case "log" -> shown(form.withRows(plus(form, onTask(uuid(act)))), false);
            case "travel" -> toSave(form.withRows(plus(form, travel(uuid(act), minutes(act)))), sheet);
            default -> throw notKnown();
        };
    }

    /** A line that is still in its box is put into rows first and seen, whatever the button. */
    private Done toSave(DayForm form, DayPages.Sheet sheet) {
        return form.line().isBlank()
                ? new Done(form, null, HttpStatus.OK)
                : heard(form, sheet, HttpStatus.UNPROCESSABLE_ENTITY);
    }

    private static Done shown(DayForm form, boolean all) {
        return new Done(form, new DayPages.Back(List.of(), List.of(), List.of(), Map.of(), null, all), HttpStatus.OK);
    }

    private static List<RowForm> plus(DayForm form, RowForm row) {
        List<RowForm> rows = new ArrayList<>(form.rows());
        rows.add(row);
        return rows;
    }

    /** A second entry on the same thing, as for rework beside the work. */
    private static List<RowForm> again(DayForm form, UUID of) {
        List<RowForm> rows = new ArrayList<>();
        for (RowForm row : form.rows()) {
            rows.add(row);
            if (row.id().equals(of)) {
                rows.add(new RowForm(
                        Ids.next(),
                        null,
                        row.what(),
                        HourClass.REWORK.code(),
                        "",
                        "",
                        "",
                        row.what().isEmpty()));
            }
        }
        return rows;
    }

    private static List<RowForm> withHours(DayForm form, UUID id, int minutes) {
        return form.rows().stream()
                .map(row -> row.id().equals(id)
                        ? row.withTime(Hours.ofMinutes(minutes).toString())
                        : row)
                .toList();
    }

    private static List<RowForm> withClass(DayForm form, UUID id, String hourClass) {
        return form.rows().stream()
                .map(row -> row.id().equals(id) ? row.withClass(hourClass) : row)
                .toList();
    }

    /** Empties the box of a saved row; the tap is the answer to whether it is meant. */
    private static DayForm off(DayForm form, UUID id) {
        Set<String> yes = new HashSet<>(form.yes());
        List<RowForm> rows = new ArrayList<>();
        for (RowForm row : form.rows()) {
            Integer version = row.version();
            boolean gone = row.id().equals(id);
            if (gone && version != null) {
                yes.add(DayPlan.removal(id, version));
            }
            rows.add(gone ? row.withTime("") : row);
        }
        return new DayForm(rows, form.line(), yes, form.act(), form.clock());
    }

    private static RowForm onTask(UUID task) {
        return new RowForm(Ids.next(), null, Target.task(task).code(), HourClass.DIRECT.code(), "", "", "", false);
    }

    private static RowForm travel(UUID job, int minutes) {
        return new RowForm(
                Ids.next(),
                null,
                Target.job(job).code(),
                HourClass.TRAVEL.code(),
                Hours.ofMinutes(minutes).toString(),
                "",
                "",
                true);
    }

    /** A row whose entry was taken off the day gets an id of its own, so that saving once more logs it anew. */
    DayForm afterRefusal(DayForm form, DayOutcome.Held held) {
        List<UUID> gone = held.objections().stream()
                .filter(o -> DayPlan.TAKEN_OFF.equals(o.sentence()))
                .map(Objection::row)
                .toList();
        if (gone.isEmpty()) {
            return form;
        }
        return form.withRows(form.rows().stream()
                .map(row -> gone.contains(row.id()) ? row.anew() : row)
                .toList());
    }

    /** Puts the one-line entry into rows. What is not plain is asked; nothing of it is saved before it was seen. */
    private Done heard(DayForm form, DayPages.Sheet sheet, HttpStatus status) {
        List<Place> likely = reads.likely(sheet.person(), sheet.date()).stream()
                .map(LikelyTask::place)
                .toList();
        List<RowForm> rows = new ArrayList<>(form.rows());
        Map<UUID, LineReader.Heard> byRow = new HashMap<>();
        List<Objection> objections = new ArrayList<>();
        List<String> left = new ArrayList<>();
        String problem = null;
        for (LineReader.Heard part : new LineReader(likely, choices.places(), reads::kindNames).read(form.line())) {
            if (part.problem() != null) {
                left.add(part.typed());
                problem = problem == null ? part.problem() : problem;
                continue;
            }
            RowForm row = put(rows, part);
            byRow.put(row.id(), part);
            if (part.place() == null) {
                objections.add(new Objection(row.id(), "what", String.valueOf(part.ask())));
            }
        }
        DayForm read = form.withRows(rows).withLine(String.join(", ", left));
        boolean nothingHeard = problem != null && byRow.isEmpty();
        HttpStatus answer = nothingHeard ? HttpStatus.UNPROCESSABLE_ENTITY : status;
        return new Done(read, new DayPages.Back(objections, List.of(), List.of(), byRow, problem, false), answer);
    }

    private static RowForm put(List<RowForm> rows, LineReader.Heard part) {
        String what = part.place() == null ? "" : part.place().target().code();
        for (int n = 0; n < rows.size(); n++) {
            RowForm row = rows.get(n);
            boolean fits = row.untouched()
                    && (row.pick()
                            ? row.what().isEmpty()
                            : row.what().equals(what)
                                    && row.hourClass().equals(part.hourClass().code()));
            if (fits) {
                RowForm filled = new RowForm(
                        row.id(),
                        null,
                        what,
                        part.hourClass().code(),
                        part.time(),
                        part.note(),
                        part.reason(),
                        row.pick());
                rows.set(n, filled);
                return filled;
            }
        }
        RowForm row = new RowForm(
                Ids.next(), null, what, part.hourClass().code(), part.time(), part.note(), part.reason(), true);
        rows.add(row);
        return row;
    }

    private static UUID uuid(String[] act) {
        try {
            if (act.length > 1 && act[1].length() == 36) {
                return UUID.fromString(act[1]);
            }
        } catch (IllegalArgumentException e) {
            // Said below.
        }
        throw notKnown();
    }

    private static int minutes(String[] act) {
        if (act.length == 3 && act[2].matches("\\d{1,4}")) {
            return Integer.parseInt(act[2]);
        }
        throw notKnown();
    }

    private static Refused notKnown() {
        return new Refused("This button is not known here. Open the day afresh.");
    }
}
