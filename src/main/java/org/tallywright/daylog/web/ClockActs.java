package org.tallywright.daylog.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.tallywright.daylog.ClockDesk;
import org.tallywright.daylog.ClockRun;
import org.tallywright.daylog.DayReads;
import org.tallywright.daylog.Entry;
import org.tallywright.daylog.Target;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.web.SignedIn;

/** What the buttons of the clock do. Each works without script, and what else is typed on the sheet stays. */
@Component
class ClockActs {
    private final ClockDesk desk;
    private final DayReads reads;

    ClockActs(ClockDesk desk, DayReads reads) {
        this.desk = desk;
        this.reads = reads;
    }

    /**
     * A form after a button of the clock.
     *
     * @param said what to say of it, or null where the page shows it
     * @param back a run that can be kept after all, or null
     * @param save whether the sheet is to be saved now, with what was put in
     */
    record Done(
            DayForm form, @Nullable String said, @Nullable UUID back, HttpStatus status, boolean save) {}

    static boolean meant(DayForm form) {
        return form.act().startsWith("clock-");
    }

    /** Whether the sheet was sent to be saved with an answer to "when did you stop?", as the key in that box does. */
    static boolean answered(DayForm form) {
        return !form.clock().ended().isEmpty() && Set.of("", "save").contains(form.act());
    }

    /** Takes the answers before the sheet is saved. */
    Done answers(DayForm form, DayPages.Sheet sheet) {
        Done last = done(form, "");
        for (UUID run : form.clock().ended().keySet()) {
            last = apply(last.form().withAct("clock-end:" + run), sheet);
            if (last.said() == null) {
                break;
            }
        }
        return last;
    }

    /** @throws NotHere on another person's sheet */
    Done apply(DayForm form, DayPages.Sheet sheet) {
        if (!sheet.person().equals(sheet.me().personId())) {
            throw new NotHere("clock");
        }
        String[] act = form.act().split(":", 2);
        String on = act.length < 2 ? "" : act[1];
        try {
            return act(act[0], on, form, sheet.me());
        } catch (Refused | NotUnderstood refused) {
            return again(form, refused.sentence(), HttpStatus.UNPROCESSABLE_ENTITY);
        }
    }

    private Done act(String act, String on, DayForm form, SignedIn me) {
        return switch (act) {
            case "clock-start" -> start(form, row(form, on), me);
            case "clock-stop" -> stop(form, id(on), me);
            case "clock-on" -> done(form, "The clock runs on: " + what(desk.stillOn(id(on), me)) + ".");
            case "clock-end" -> ended(form, id(on), me);
            case "clock-drop" -> {
                ClockRun run = desk.drop(id(on), me);
                yield new Done(
                        form, "The clock's time on " + what(run) + " is thrown away.", run.id(), HttpStatus.OK, false);
            }
            case "clock-keep" -> done(form, "The clock's time on " + what(desk.keep(id(on), me)) + " is back.");
            case "clock-take" -> take(form, ClockForm.take(on), me);
            default -> throw unknown();
        };
    }

    private static UUID id(String text) {
        UUID id = ClockForm.id(text);
        if (id == null) {
            throw unknown();
        }
        return id;
    }

    private static Refused unknown() {
        return new Refused("This button is not known here. Open the day afresh.");
    }

    private static String what(ClockRun run) {
        return run.place().inWords();
    }

    private static Done done(DayForm form, String said) {
        return new Done(form, said, null, HttpStatus.OK, false);
    }

    private static Done again(DayForm form, String problem, HttpStatus status) {
        return new Done(form.withClock(form.clock().refused(problem)), null, null, status, false);
    }

    /** By its place and not its id: a script may have given the row the id of a draft. */
    private static RowForm row(DayForm form, String box) {
        int at = box.matches("row\\.\\d{1,3}") ? Integer.parseInt(box.substring("row.".length())) : -1;
        if (at < 0 || at >= form.rows().size()) {
            throw unknown();
        }
        return form.rows().get(at);
    }

    private Done start(DayForm form, RowForm row, SignedIn me) {
        UUID id = form.clock().id();
        if (id == null) {
            throw unknown();
        }
        if (row.what().isEmpty()) {
            throw new Refused("Choose what the clock is to run on, then start it.");
        }
        ClockDesk.Started started =
                desk.start(id, form.clock().seen(), Target.of(row.what()), HourClass.of(row.hourClass()), me);
        ClockRun run = started.run();
        if (!started.met() && run != null) {
            return done(form, "The clock runs: " + what(run) + ".");
        }
        return again(
                form,
                run == null
                        ? "This page had started its clock before, and that one was stopped. Start once more."
                        : "Nothing was started: the clock runs on " + what(run)
                                + ", started meanwhile. Start once more to switch.",
                HttpStatus.CONFLICT);
    }

    private Done stop(DayForm form, UUID id, SignedIn me) {
        ClockRun run = desk.stop(id, me);
        return done(
                form,
                run.endKnown()
                        ? "The clock rests: " + what(run) + ", " + Hours.ofMinutes(ClockRun.minutes(List.of(run)))
                                + ". It is on the sheet when you put it in."
                        : "The clock on " + what(run) + " rests. It ran for long; say below when you stopped.");
    }

    private Done ended(DayForm form, UUID id, SignedIn me) {
        ClockRun run = desk.ended(id, form.clock().ended().getOrDefault(id, ""), me);
        String hours = Hours.ofMinutes(ClockRun.minutes(List.of(run))).toString();
        return done(
                form.withClock(form.clock().without(id)),
                "The clock on " + what(run) + " came to " + hours + " on " + DayWords.day(run.date())
                        + ". It is on that sheet when you put it in.");
    }

    /** Fills an empty row, or adds one; a row that the clock filled before and that was changed by hand stays as it is. */
    private Done take(DayForm form, ClockDesk.@Nullable Take take, SignedIn me) {
        if (take == null) {
            throw unknown();
        }
        ClockRun run = desk.of(take.run(), me);
        ClockDesk.Take put = besideTyped(form, take);
        RowForm filled = new RowForm(
                put.entry(),
                null,
                run.target().code(),
                run.hourClass().code(),
                Hours.ofMinutes(put.minutes()).toString(),
                "",
                "",
                false);
        List<RowForm> rows = new ArrayList<>(form.rows());
        int at = rows.stream().map(RowForm::id).toList().indexOf(put.entry());
        if (at < 0) {
            rows.add(filled);
        } else if (rows.get(at).time().isBlank()) {
            rows.set(at, withWords(filled, rows.get(at)));
        }
        DayForm day = form.withRows(rows).withClock(form.clock().with(put));
        return new Done(day, null, null, HttpStatus.OK, true);
    }

    /** Hours typed by hand into the row are not the clock's: those go beside them, as an entry of their own. */
    private static ClockDesk.Take besideTyped(DayForm form, ClockDesk.Take take) {
        boolean put =
                form.clock().takes().stream().anyMatch(before -> before.entry().equals(take.entry()));
        boolean typed = form.rows().stream()
                .anyMatch(row -> row.id().equals(take.entry()) && !row.time().isBlank());
        return typed && !put ? new ClockDesk.Take(Ids.next(), take.run(), take.minutes()) : take;
    }

    private static RowForm withWords(RowForm filled, RowForm row) {
        return new RowForm(
                filled.id(),
                row.version(),
                filled.what(),
                filled.hourClass(),
                filled.time(),
                row.note(),
                row.reason(),
                row.pick());
    }

    /** The sheet with a problem and without the offers that were to be put in. */
    static DayForm refused(DayForm form, String problem) {
        Set<UUID> entries =
                form.clock().takes().stream().map(ClockDesk.Take::entry).collect(Collectors.toSet());
        List<RowForm> rows = form.rows().stream()
                .map(row -> row.version() == null && entries.contains(row.id()) ? row.withTime("") : row)
                .toList();
        return form.withRows(rows).withClock(form.clock().withoutTakes().refused(problem));
    }

    /** Whether the sheet holds anything that is not saved, apart from what the button was about. */
    boolean typed(DayForm form, DayPages.Sheet sheet) {
        Map<UUID, RowForm> kept =
                reads.entries(sheet.person(), sheet.date()).stream().collect(Collectors.toMap(Entry::id, RowForm::of));
        return !form.line().isBlank()
                || !form.clock().ended().isEmpty()
                || form.rows().stream().anyMatch(row -> touched(row, kept.get(row.id())));
    }

    private static boolean touched(RowForm row, @Nullable RowForm kept) {
        return kept == null
                ? !row.time().isBlank()
                        || !row.note().isBlank()
                        || !row.reason().isBlank()
                : !kept.equals(row);
    }
}
