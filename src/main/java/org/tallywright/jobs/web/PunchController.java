package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
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
import org.tallywright.jobs.PunchDesk;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The punch list of a job, open to everybody who works on it. */
@Controller
@RequestMapping("/jobs/{number}/punch-items")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class PunchController {
    private final JobDesk desk;
    private final JobHeads heads;
    private final PieceRows pieces;
    private final PunchDesk punch;

    PunchController(JobDesk desk, JobHeads heads, PieceRows pieces, PunchDesk punch) {
        this.desk = desk;
        this.heads = heads;
        this.pieces = pieces;
        this.punch = punch;
    }

    record Form(@Nullable UUID id, String piece, String text) {
        Form {
            piece = Texts.of(piece);
            text = Texts.of(text);
        }
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, SignedIn me, Model model) {
        return form(desk.find(number), new Form(Ids.next(), "", ""), FormErrors.none(), me, model);
    }

    private String form(JobRef job, Form form, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("form", form);
        model.addAttribute("pieces", pieces.choice(job.id()));
        model.addAttribute("errors", errors);
        return "jobs/punch-item";
    }

    @PostMapping
    String create(
            @PathVariable String number,
            Form form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        UUID id = Reader.own(form.id());
        FormReader read = new FormReader();
        String words = read.field("text", () -> Typed.requiredLine(form.text(), 300));
        UUID piece = read.optional("piece", form.piece(), () -> Reader.id(form.piece(), "Pick a piece of this job."));
        if (words != null && !read.refused()) {
            try {
                punch.raise(job.id(), id, piece, words, me.personId());
                return done(number, "The item is on the punch list.", redirect);
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        Answer.refused(response);
        return form(job, form, read.errors(), me, model);
    }

    @PostMapping("/{id}/completion")
    String complete(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        punch.done(desk.find(number).id(), id, me.personId());
        return done(number, "The item is done.", redirect);
    }

    @PostMapping("/{id}/reopening")
    String reopen(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        punch.notDone(desk.find(number).id(), id, me.personId());
        return done(number, "The item is open again.", redirect);
    }

    @PostMapping("/{id}/sign-off")
    @Access({Role.OWNER, Role.LEAD})
    String signOff(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String name,
            SignedIn me,
            RedirectAttributes redirect) {
        String who = Typed.line(name, 80);
        punch.signOff(desk.find(number).id(), id, who.isEmpty() ? me.name() : who, me.personId());
        return done(number, "The item is signed off.", redirect);
    }

    private static String done(String number, String sentence, RedirectAttributes redirect) {
        Flash.done(redirect, sentence);
        return "redirect:/jobs/" + number + "#punch-list";
    }
}
