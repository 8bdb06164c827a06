package org.tallywright.measuring.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.measuring.PartDetails;
import org.tallywright.measuring.SiteDesk;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A part of solid wood that will move with the air. */
@Controller
@RequestMapping("/jobs/{number}/solid-parts")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class PartController {
    private static final int UNPROCESSABLE = 422;

    private final JobDesk jobs;
    private final JobHeads heads;
    private final SiteDesk desk;
    private final SitePages pages;

    PartController(JobDesk jobs, JobHeads heads, SiteDesk desk, SitePages pages) {
        this.jobs = jobs;
        this.heads = heads;
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, SignedIn me, Model model) {
        JobRef job = jobs.find(number).guardOpen();
        return form(job, PartForm.blank(), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = jobs.find(number).guardOpen();
        return form(job, kept(job, id), id, FormErrors.none(), me, model);
    }

    private PartForm kept(JobRef job, UUID id) {
        SiteDesk.Kept<PartDetails> kept = desk.part(job.id(), id);
        return PartForm.of(id, kept.version(), kept.details(), pages.units());
    }

    private String form(JobRef job, PartForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        Choices.add(model, job, pages);
        model.addAttribute("woods", PartForm.WOODS);
        model.addAttribute("cuts", PartForm.CUTS);
        return "measuring/part";
    }

    @PostMapping
    String create(
            @PathVariable String number,
            PartForm form,
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
            PartForm form,
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
            PartForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        PartDetails details = form.read(read, pages.units());
        if (details != null) {
            try {
                desk.save(job.id(), id, version, details, me.personId());
                Flash.done(redirect, details.name() + " is written down.");
                return "redirect:/jobs/" + number + "/site-measure";
            } catch (Refused refused) {
                read.refuse(refused);
            } catch (Stale stale) {
                throw new Stale(stale.what(), form.beside(kept(job, id)));
            }
        }
        response.setStatus(UNPROCESSABLE);
        return form(job, form, version == null ? null : id, read.errors(), me, model);
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.removePart(jobs.find(number).id(), id, me.personId());
        Flash.done(redirect, "The solid part is taken out.");
        return "redirect:/jobs/" + number + "/site-measure";
    }
}
