package org.tallywright.daylog.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
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
import org.tallywright.daylog.DayLog;
import org.tallywright.daylog.DayOutcome;
import org.tallywright.daylog.Entry;
import org.tallywright.daylog.Objection;
import org.tallywright.daylog.SaveDay;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** One entry: correct it, move it to its right day or task, take it off, read its trail. */
@Controller
@RequestMapping("/entries/{id}")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class EntryController {
    private static final String VIEW = "daylog/entry";

    private final EntryPages pages;
    private final DayLog log;

    EntryController(EntryPages pages, DayLog log) {
        this.pages = pages;
        this.log = log;
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
    String show(@PathVariable UUID id, SignedIn me, Model model) {
        model.addAttribute("page", pages.fresh(id, me));
        return VIEW;
    }

    @PostMapping
    String update(
            @PathVariable UUID id,
            EntryForm typed,
            @RequestParam(name = "yes", defaultValue = "") List<String> yes,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        RowForm form = typed.row(id);
        if (pages.takenOff(id, me)) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("page", pages.tooLate(id, me, form, typed.dateText()));
            return VIEW;
        }
        Entry entry = pages.entry(id, me);
        DayTyped read = new DayTyped(List.of(form));
        List<Objection> objections = new ArrayList<>(read.objections);
        if (form.time().isBlank()) {
            objections.add(new Objection(id, "time", "Say how long it took, or take the entry off the day below."));
        }
        LocalDate date = date(typed.dateText(), id, entry.date(), objections);
        DayOutcome outcome =
                log.save(new SaveDay(entry.personId(), date, me, read.rows, new HashSet<>(yes), objections, true));
        if (outcome instanceof DayOutcome.Held held) {
            response.setStatus(
                    (held.conflicts().isEmpty() ? HttpStatus.UNPROCESSABLE_ENTITY : HttpStatus.CONFLICT).value());
            model.addAttribute("page", pages.again(entry, me, form, typed.dateText(), held, yes));
            return VIEW;
        }
        DayController.said(redirect, "Saved.", ((DayOutcome.Saved) outcome).changes());
        return "redirect:/entries/" + id;
    }

    @PostMapping("/deletion")
    String delete(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String version,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        if (!version.matches("\\d{1,9}")) {
            throw new Refused("A hidden part of this page came back damaged. Open the entry afresh.");
        }
        DayLog.Removed removed;
        try {
            removed = log.delete(id, Integer.parseInt(version), me);
        } catch (Stale stale) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("page", pages.fresh(id, me).with(stale.rows()));
            return VIEW;
        }
        DayController.said(redirect, "Taken off the day.", List.of(removed.change()));
        return "redirect:" + DayWords.href(removed.date(), removed.person(), me.personId());
    }

    private static LocalDate date(String typed, UUID id, LocalDate present, List<Objection> objections) {
        try {
            return DayController.date(typed);
        } catch (NotHere e) {
            objections.add(new Objection(id, "date", "Write the day like 2026-11-24."));
            return present;
        }
    }
}
