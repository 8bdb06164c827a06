package org.tallywright.daylog.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.daylog.Change;
import org.tallywright.daylog.ClockDesk;
import org.tallywright.daylog.DayLog;
import org.tallywright.daylog.DayMarks;
import org.tallywright.daylog.DayOutcome;
import org.tallywright.daylog.SaveDay;
import org.tallywright.daylog.TakeBack;
import org.tallywright.daylog.Week;
import org.tallywright.people.People;
import org.tallywright.people.PersonName;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The day sheet: today at the first address, any day at its own. */
@Controller
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class DayController {
    private static final LocalDate FIRST = LocalDate.of(2000, 1, 1);
    private static final String VIEW = "daylog/day";

    private final DayPages pages;
    private final DayActs acts;
    private final ClockActs clockActs;
    private final ClockDesk clockDesk;
    private final DayLog log;
    private final DayMarks marks;
    private final TakeBack back;
    private final People people;
    private final ShopClock clock;

    DayController(
            DayPages pages,
            DayActs acts,
            ClockActs clockActs,
            ClockDesk clockDesk,
            DayLog log,
            DayMarks marks,
            TakeBack back,
            People people,
            ShopClock clock) {
        this.pages = pages;
        this.acts = acts;
        this.clockActs = clockActs;
        this.clockDesk = clockDesk;
        this.log = log;
        this.marks = marks;
        this.back = back;
        this.people = people;
        this.clock = clock;
    }

    @GetMapping("/")
    @Access({Role.OWNER, Role.LEAD, Role.HELPER, Role.BOOKKEEPER})
    String index(SignedIn me, Model model) {
        if (!me.role().logsHours()) {
            return "redirect:/books";
        }
        return view(model, pages.fresh(sheet(me, clock.today().toString(), null)));
    }

    @GetMapping("/days/{date}")
    String show(@PathVariable String date, @RequestParam @Nullable UUID person, SignedIn me, Model model) {
        return view(model, pages.fresh(sheet(me, date, person)));
    }

    @PostMapping("/days/{date}")
    String create(
            @PathVariable String date,
            @RequestParam @Nullable UUID person,
            @RequestParam MultiValueMap<String, String> sent,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        DayPages.Sheet sheet = sheet(me, date, person);
        model.addAttribute("typed", "typed");
        DayForm form = DayForm.read(sent);
        if (ClockActs.meant(form)) {
            return clock(sheet, clockActs.apply(form, sheet), model, response, redirect);
        }
        if (ClockActs.answered(form)) {
            ClockActs.Done answers = clockActs.answers(form, sheet);
            if (answers.said() == null || !clockActs.typed(answers.form(), sheet)) {
                return clock(sheet, answers, model, response, redirect);
            }
            form = answers.form().withAct("");
        }
        return act(sheet, form, model, response, redirect);
    }

    private String act(
            DayPages.Sheet sheet,
            DayForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        DayActs.Done done = acts.apply(form, sheet);
        if (done.shown() != null) {
            response.setStatus(done.status().value());
            return view(model, pages.again(sheet, done.form(), done.shown()));
        }
        return save(sheet, done.form(), model, response, redirect);
    }

    /** A button of the clock: what is typed beside it stays, and where nothing is, the sheet is opened afresh. */
    private String clock(
            DayPages.Sheet sheet,
            ClockActs.Done done,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        DayForm form = done.form();
        if (done.save()) {
            return act(sheet, form.withAct(""), model, response, redirect);
        }
        if (done.said() == null || clockActs.typed(form, sheet)) {
            response.setStatus(done.status().value());
            model.addAttribute("clockSaid", done.said());
            model.addAttribute("clockBack", done.back());
            return view(model, pages.again(sheet, form, DayPages.Back.asking(List.of())));
        }
        Flash.done(redirect, done.said());
        if (done.back() != null) {
            redirect.addFlashAttribute("clockBack", done.back().toString());
        }
        return redirect(sheet);
    }

    private String save(
            DayPages.Sheet sheet,
            DayForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        DayTyped typed = new DayTyped(form.rows());
        SaveDay day =
                new SaveDay(sheet.person(), sheet.date(), sheet.me(), typed.rows, form.yes(), typed.objections, false);
        DayOutcome outcome;
        try {
            outcome = form.clock().takes().isEmpty()
                    ? log.save(day)
                    : clockDesk.save(day, form.clock().takes());
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            DayForm without = ClockActs.refused(form, refused.sentence());
            return view(model, pages.again(sheet, without, DayPages.Back.asking(List.of())));
        }
        if (outcome instanceof DayOutcome.Held held) {
            boolean met = !held.conflicts().isEmpty();
            response.setStatus((met ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_ENTITY).value());
            return view(model, pages.again(sheet, acts.afterRefusal(form, held), DayPages.Back.of(held)));
        }
        DayOutcome.Saved saved = (DayOutcome.Saved) outcome;
        said(redirect, "Saved. The day comes to " + Hours.ofMinutes(saved.minutes()) + ".", saved.changes());
        return redirect(sheet);
    }

    @PostMapping("/days/{date}/undo")
    String undo(
            @PathVariable String date,
            @RequestParam @Nullable UUID person,
            @RequestParam(name = "change", defaultValue = "") List<String> changes,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        DayPages.Sheet sheet = sheet(me, date, person);
        if (changes.size() > 200) {
            throw new Refused("That is too much to take back at once.");
        }
        try {
            back.undo(
                    sheet.person(),
                    sheet.date(),
                    changes.stream().map(Change::of).toList(),
                    me);
        } catch (Stale stale) {
            response.setStatus(HttpStatus.CONFLICT.value());
            return view(model, pages.fresh(sheet, null, stale.rows()));
        }
        Flash.done(redirect, "Taken back.");
        return redirect(sheet);
    }

    @PostMapping("/days/{date}/mark")
    String mark(
            @PathVariable String date,
            @RequestParam @Nullable UUID person,
            @RequestParam(defaultValue = "") String kind,
            @RequestParam(defaultValue = "") String note,
            @RequestParam(defaultValue = "") String version,
            @RequestParam(defaultValue = "") String to,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        DayPages.Sheet sheet = sheet(me, date, person);
        try {
            Flash.done(redirect, mark(sheet, kind, note, version));
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return view(model, pages.fresh(sheet, new DayPage.Marking(note, refused.sentence()), List.of()));
        } catch (Stale stale) {
            response.setStatus(HttpStatus.CONFLICT.value());
            return view(model, pages.fresh(sheet, new DayPage.Marking(note, null), stale.rows()));
        }
        if (to.equals("hours")) {
            return "redirect:/hours?person=" + sheet.person() + "&week=" + sheet.date();
        }
        if (to.equals("today")) {
            return "redirect:/";
        }
        if (to.equals("week")) {
            return "redirect:" + WeekSheets.href(Week.mondayOf(sheet.date()), sheet.person(), me);
        }
        return redirect(sheet);
    }

    /** Sets the mark or takes it off; returns what to say about it. */
    private String mark(DayPages.Sheet sheet, String kind, String note, String version) {
        Integer seen = version.matches("\\d{1,9}") ? Integer.valueOf(version) : null;
        if (kind.isEmpty()) {
            marks.clear(sheet.person(), sheet.date(), seen, sheet.me());
            return "The mark is off.";
        }
        DayMarks.Kind mark = DayMarks.Kind.of(kind);
        marks.mark(sheet.person(), sheet.date(), mark, Typed.line(note, 200), seen, sheet.me());
        return "Marked: " + mark.label().toLowerCase(java.util.Locale.ROOT) + ".";
    }

    static void said(RedirectAttributes redirect, String sentence, List<Change> changes) {
        Flash.done(redirect, sentence);
        if (!changes.isEmpty()) {
            redirect.addFlashAttribute(
                    "undo",
                    new java.util.ArrayList<>(changes.stream().map(Change::code).toList()));
        }
    }

    private static String view(Model model, DayPage page) {
        model.addAttribute("page", page);
        return VIEW;
    }

    private String redirect(DayPages.Sheet sheet) {
        boolean home = sheet.date().equals(clock.today())
                && sheet.person().equals(sheet.me().personId());
        return "redirect:"
                + (home
                        ? "/"
                        : DayWords.href(sheet.date(), sheet.person(), sheet.me().personId()));
    }

    private DayPages.Sheet sheet(SignedIn me, String date, @Nullable UUID person) {
        UUID whose = Objects.requireNonNullElse(person, me.personId());
        if (!DayLog.mayLog(me, whose)) {
            throw new NotHere("day");
        }
        String name = me.name();
        if (!whose.equals(me.personId())) {
            PersonName other = people.named(whose);
            if (!other.role().logsHours()) {
                throw new NotHere("day");
            }
            name = other.name();
        }
        return new DayPages.Sheet(me, whose, name, date(date));
    }

    static LocalDate date(String text) {
        try {
            LocalDate date = LocalDate.parse(text);
            if (text.length() == 10 && !date.isBefore(FIRST)) {
                return date;
            }
        } catch (DateTimeParseException e) {
            // Said below: an address that is no day names nothing.
        }
        throw new NotHere("day");
    }
}
