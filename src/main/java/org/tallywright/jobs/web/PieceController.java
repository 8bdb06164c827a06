package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The pieces of a job. */
@Controller
@RequestMapping("/jobs/{number}/pieces")
@Access({Role.OWNER, Role.LEAD})
class PieceController {
    private final JobDesk desk;
    private final JobHeads heads;
    private final PieceDesk pieces;
    private final PieceRows rows;
    private final PieceKinds kinds;
    private final Wording wording;

    PieceController(JobDesk desk, JobHeads heads, PieceDesk pieces, PieceRows rows, PieceKinds kinds, Wording wording) {
        this.desk = desk;
        this.heads = heads;
        this.pieces = pieces;
        this.rows = rows;
        this.kinds = kinds;
        this.wording = wording;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, SignedIn me, Model model) {
        desk.find(number).guardOpen();
        return form(number, PieceForm.blank(), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        PieceForm kept = kept(desk.find(number).guardOpen(), id);
        return form(number, kept, id, FormErrors.none(), me, model);
    }

    private PieceForm kept(JobRef job, UUID id) {
        PieceRows.Kept<PieceDetails> kept = rows.piece(job.id(), id);
        return PieceForm.of(id, kept.version(), kept.details(), wording);
    }

    private String form(
            String number, PieceForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(number, me, "job"));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("kinds", kindNames());
        model.addAttribute("lengthUnit", wording.lengthSuffix());
        model.addAttribute("errors", errors);
        return "jobs/piece";
    }

    private Map<String, String> kindNames() {
        Map<String, String> names = new LinkedHashMap<>();
        kinds.active().forEach(kind -> names.put(kind.id().toString(), kind.name()));
        return names;
    }

    @PostMapping
    String create(
            @PathVariable String number,
            PieceForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return save(number, Reader.own(form.id()), null, form, me, model, response, redirect);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable String number,
            @PathVariable UUID id,
            PieceForm form,
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
            PieceForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        return new FormSave<PieceDetails>(read -> form.read(read, wording.units()))
                .keeping(details -> {
                    pieces.save(job.id(), id, version, details, me.personId());
                    Flash.done(redirect, "The piece is saved.");
                    return "redirect:/jobs/" + number + "/pieces/" + id + "/proposals";
                })
                .beside(() -> {
                    Map<String, String> names = kindNames();
                    return form.beside(kept(job, id), k -> names.getOrDefault(k, ""));
                })
                .or(response, errors -> form(number, form, version == null ? null : id, errors, me, model));
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        pieces.remove(desk.find(number).id(), id, me.personId());
        Flash.done(redirect, "The piece is taken out.");
        return "redirect:/jobs/" + number;
    }
}
