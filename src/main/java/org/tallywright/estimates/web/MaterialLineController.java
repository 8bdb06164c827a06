package org.tallywright.estimates.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.MaterialDraft;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.NotHere;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

@Controller
@RequestMapping("/jobs/{number}/estimate/materials")
@Access({Role.OWNER, Role.LEAD})
class MaterialLineController {
    private final JobDesk jobs;
    private final EstimateLines desk;
    private final EstimatePricer pricer;
    private final LineWords words;

    MaterialLineController(JobDesk jobs, EstimateLines desk, EstimatePricer pricer, LineWords words) {
        this.jobs = jobs;
        this.desk = desk;
        this.pricer = pricer;
        this.words = words;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, Model model) {
        return page(jobs.find(number), MaterialForm.blank(), FormErrors.none(), model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, Model model) {
        JobRef job = jobs.find(number);
        EstimateSheet.MaterialRow row = pricer.sheet(job.id()).materials().stream()
                .filter(m -> m.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotHere("material line"));
        return page(job, MaterialForm.of(row), FormErrors.none(), model);
    }

    @PostMapping
    String create(
            @PathVariable String number,
            MaterialForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        return new FormSave<MaterialDraft>(form::read)
                .keeping(draft -> {
                    desk.save(job.id(), draft, me.personId());
                    Flash.done(redirect, "Material kept.");
                    return "redirect:/jobs/" + job.number() + "/estimate"
                            + (form.another() ? "/materials/new" : "#materials");
                })
                .or(response, errors -> page(job, form, errors, model));
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        desk.removeMaterial(job.id(), id, me.personId());
        Flash.done(redirect, "Material line removed.");
        return "redirect:/jobs/" + job.number() + "/estimate#materials";
    }

    private String page(JobRef job, MaterialForm form, FormErrors errors, Model model) {
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("materials", words.materials(form.material()));
        model.addAttribute("pieces", words.pieces(job.id()));
        return "estimates/material";
    }
}
