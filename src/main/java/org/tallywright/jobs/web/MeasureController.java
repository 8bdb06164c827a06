package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
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
import org.tallywright.jobs.MeasureDetails;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** What was measured on site; everybody who works there writes it down. */
@Controller
@RequestMapping("/jobs/{number}/measures")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class MeasureController {
    private final JobDesk desk;
    private final JobHeads heads;
    private final PieceDesk pieces;
    private final PieceRows rows;
    private final Wording wording;
    private final ShopClock clock;

    MeasureController(
            JobDesk desk, JobHeads heads, PieceDesk pieces, PieceRows rows, Wording wording, ShopClock clock) {
        this.desk = desk;
        this.heads = heads;
        this.pieces = pieces;
        this.rows = rows;
        this.wording = wording;
        this.clock = clock;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, @RequestParam(defaultValue = "") String piece, SignedIn me, Model model) {
        JobRef job = desk.find(number).guardOpen();
        return form(job, MeasureForm.blank(piece, clock.today()), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = desk.find(number).guardOpen();
        return form(job, kept(job, id), id, FormErrors.none(), me, model);
    }

    private MeasureForm kept(JobRef job, UUID id) {
        PieceRows.Kept<MeasureDetails> kept = rows.measure(job.id(), id);
        return MeasureForm.of(id, kept.version(), kept.details(), wording);
    }

    private String form(
            JobRef job, MeasureForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("pieces", rows.choice(job.id()));
        model.addAttribute("lengthUnit", wording.lengthSuffix());
        model.addAttribute("errors", errors);
        return "jobs/measure";
    }

    @PostMapping
    String create(
            @PathVariable String number,
            MeasureForm form,
            @RequestParam(defaultValue = "") String then,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        String done = save(number, Reader.own(form.id()), null, form, me, model, response, redirect);
        boolean another = then.equals("another") && done.startsWith("redirect:");
        return another ? done + "/measures/new?piece=" + form.pieceOrNone() : done;
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable String number,
            @PathVariable UUID id,
            MeasureForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        int version = form.version() == null ? -1 : form.version();
        return save(number, id, version, form, me, model, response, redirect);
    }

    private String save(
            String number,
            UUID id,
            @Nullable Integer version,
            MeasureForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        return new FormSave<MeasureDetails>(read -> form.read(read, wording.units()))
                .keeping(details -> {
                    pieces.measure(job.id(), id, version, details, me.personId());
                    Flash.done(
                            redirect, details.name() + " is written down: " + wording.length(details.length()) + ".");
                    return "redirect:/jobs/" + number;
                })
                .beside(() -> {
                    Map<String, String> names = rows.choice(job.id());
                    return form.beside(kept(job, id), p -> names.getOrDefault(p, ""));
                })
                .or(response, errors -> form(job, form, version == null ? null : id, errors, me, model));
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        pieces.removeMeasure(desk.find(number).id(), id, me.personId());
        Flash.done(redirect, "The measure is taken out.");
        return "redirect:/jobs/" + number;
    }
}
