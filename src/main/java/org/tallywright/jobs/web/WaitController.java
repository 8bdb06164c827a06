package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.ShopDates;
import org.tallywright.jobs.WaitDesk;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Moves the end of a wait by hand. */
@Controller
@RequestMapping("/jobs/{number}/waits/{id}")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class WaitController {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final JobDesk desk;
    private final JobHeads heads;
    private final WaitRows rows;
    private final WaitDesk waits;
    private final ShopClock clock;
    private final ShopDates dates;

    WaitController(JobDesk desk, JobHeads heads, WaitRows rows, WaitDesk waits, ShopClock clock, ShopDates dates) {
        this.desk = desk;
        this.heads = heads;
        this.rows = rows;
        this.waits = waits;
        this.clock = clock;
        this.dates = dates;
    }

    record Form(int version, String endsOn, String endsAt) {
        List<Stale.Row> beside(Form theirs) {
            return List.of(
                    new Stale.Row("Ends on", theirs.endsOn, endsOn), new Stale.Row("Ends at", theirs.endsAt, endsAt));
        }
    }

    @GetMapping
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = desk.find(number).guardOpen();
        WaitRows.Row wait = rows.one(job.id(), id);
        return form(job, wait, kept(wait), FormErrors.none(), me, model);
    }

    private Form kept(WaitRows.Row wait) {
        ZonedDateTime end = wait.endsAt().atZone(clock.zone());
        return new Form(wait.version(), end.toLocalDate().toString(), end.format(TIME));
    }

    private String form(JobRef job, WaitRows.Row wait, Form form, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("wait", wait);
        model.addAttribute("since", dates.moment(wait.startedAt()));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "jobs/wait";
    }

    /** Still tacky, or a warm shop: another end. */
    @PostMapping
    String update(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int version,
            @RequestParam(defaultValue = "") String endsOn,
            @RequestParam(defaultValue = "") String endsAt,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        FormReader read = new FormReader();
        LocalDate on = read.field("endsOn", () -> Reader.day(endsOn));
        LocalTime at = read.field("endsAt", () -> Reader.time(endsAt));
        if (on != null && at != null) {
            try {
                Instant end = on.atTime(at).atZone(clock.zone()).toInstant();
                waits.push(job.id(), id, version, end, me.personId());
                Flash.done(redirect, "The wait ends " + dates.moment(end) + ".");
                return "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse(refused);
            } catch (Stale stale) {
                Form typed = new Form(version, endsOn, endsAt);
                throw new Stale(stale.what(), typed.beside(kept(rows.one(job.id(), id))));
            }
        }
        Answer.refused(response);
        return form(job, rows.one(job.id(), id), new Form(version, endsOn, endsAt), read.errors(), me, model);
    }

    /** Dry before its time. */
    @PostMapping("/end")
    String end(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        waits.end(desk.find(number).id(), id, me.personId());
        Flash.done(redirect, "The wait is over.");
        return "redirect:/jobs/" + number;
    }
}
