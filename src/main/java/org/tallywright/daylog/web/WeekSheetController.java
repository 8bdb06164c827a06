package org.tallywright.daylog.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.daylog.Corrections;
import org.tallywright.daylog.Week;
import org.tallywright.daylog.WeekDesk;
import org.tallywright.daylog.WeekState;
import org.tallywright.people.People;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Typed;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A person's week: read it, hand it in, approve it, lock it, correct it. */
@Controller
@RequestMapping("/weeks/{date}")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class WeekSheetController {
    private static final String VIEW = "daylog/week";

    private final WeekSheets sheets;
    private final WeekDesk weeks;
    private final Corrections corrections;
    private final People people;
    private final ShopClock clock;

    WeekSheetController(WeekSheets sheets, WeekDesk weeks, Corrections corrections, People people, ShopClock clock) {
        this.sheets = sheets;
        this.weeks = weeks;
        this.corrections = corrections;
        this.people = people;
        this.clock = clock;
    }

    @ModelAttribute("classes")
    Map<String, String> classes() {
        Map<String, String> classes = new LinkedHashMap<>();
        for (HourClass hourClass : HourClass.values()) {
            classes.put(hourClass.code(), hourClass.label());
        }
        return classes;
    }

    @GetMapping
    @Access({Role.OWNER, Role.LEAD, Role.HELPER, Role.BOOKKEEPER})
    String show(@PathVariable String date, @RequestParam @Nullable UUID person, SignedIn me, Model model) {
        return view(me, whose(person, me), monday(date), null, FormErrors.none(), model);
    }

    @PostMapping
    String update(
            @PathVariable String date,
            @RequestParam @Nullable UUID person,
            @RequestParam(defaultValue = "") String to,
            @RequestParam(defaultValue = "") String version,
            @RequestParam(defaultValue = "") String note,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UUID whose = whose(person, me);
        LocalDate monday = monday(date);
        WeekState state = WeekState.of(to);
        Integer seen = version.matches("\\d{1,9}") ? Integer.valueOf(version) : null;
        try {
            weeks.move(whose, monday, state, seen, Typed.line(note, 300), me);
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return view(me, whose, monday, null, FormErrors.of("note", refused.sentence()), model);
        }
        Flash.done(redirect, state == WeekState.OPEN ? "The week is open again." : state.label() + ".");
        return "redirect:" + WeekSheets.href(monday, whose, me);
    }

    @PostMapping("/corrections")
    @Access({Role.OWNER, Role.LEAD})
    String create(
            @PathVariable String date,
            @RequestParam @Nullable UUID person,
            CorrectionForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UUID whose = whose(person, me);
        LocalDate monday = monday(date);
        FormReader read = new FormReader();
        Corrections.Wanted wanted = form.read(whose, monday, read);
        if (wanted != null) {
            try {
                Hours more = Hours.ofMinutes(corrections.correct(wanted, me));
                Flash.done(redirect, "Corrected by " + (more.isNegative() ? "" : "+") + more + ".");
                return "redirect:" + WeekSheets.href(monday, whose, me);
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return view(me, whose, monday, form, read.errors(), model);
    }

    private String view(
            SignedIn me, UUID whose, LocalDate monday, @Nullable CorrectionForm typed, FormErrors errors, Model model) {
        model.addAttribute("page", sheets.of(me, whose, monday, typed));
        model.addAttribute("errors", errors);
        return VIEW;
    }

    private UUID whose(@Nullable UUID person, SignedIn me) {
        UUID whose = Objects.requireNonNullElse(person, me.personId());
        boolean own = whose.equals(me.personId());
        if (me.is(Role.HELPER) && !own || !people.named(whose).role().logsHours()) {
            throw new NotHere("week");
        }
        return whose;
    }

    private LocalDate monday(String date) {
        LocalDate monday = Week.mondayOf(DayController.date(date));
        if (monday.isAfter(clock.today())) {
            throw new NotHere("week");
        }
        return monday;
    }
}
