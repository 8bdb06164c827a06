package org.tallywright.measuring.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
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
import org.tallywright.jobs.JobRef;
import org.tallywright.measuring.PartDetails;
import org.tallywright.measuring.SiteDesk;
import org.tallywright.measuring.Species;
import org.tallywright.measuring.WoodDesk;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A part of solid wood that will move with the air. */
@Controller
@RequestMapping("/jobs/{number}/solid-parts")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class PartController {
    private final SiteForms forms;
    private final SiteDesk desk;
    private final SitePages pages;
    private final WoodDesk woods;

    PartController(SiteForms forms, SiteDesk desk, SitePages pages, WoodDesk woods) {
        this.forms = forms;
        this.desk = desk;
        this.pages = pages;
        this.woods = woods;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, SignedIn me, Model model) {
        JobRef job = forms.openJob(number);
        return form(job, PartForm.blank(), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = forms.openJob(number);
        return form(job, kept(job, id), id, FormErrors.none(), me, model);
    }

    private PartForm kept(JobRef job, UUID id) {
        SiteDesk.Kept<PartDetails> kept = desk.part(job.id(), id);
        return PartForm.of(id, kept.version(), kept.details(), pages.units());
    }

    /** The woods of the catalogue's materials first, each with their names. */
    private Map<String, String> woods() {
        Map<Species, List<String>> inUse = woods.inUse();
        Map<String, String> options = new LinkedHashMap<>();
        inUse.forEach((species, names) ->
                options.put(species.code(), species.label() + " (" + String.join("; ", names) + ")"));
        PartForm.WOODS.forEach(options::putIfAbsent);
        return options;
    }

    private String form(JobRef job, PartForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("woods", woods());
        model.addAttribute("cuts", PartForm.CUTS);
        return forms.page("part", job, form, kept, errors, me, model);
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
        JobRef job = forms.job(number);
        return new FormSave<PartDetails>(read -> form.read(read, pages.units()))
                .keeping(details -> {
                    desk.save(job.id(), id, version, details, me.personId());
                    return SiteForms.done(job, details.name() + " is written down.", redirect);
                })
                .beside(() -> form.beside(kept(job, id)))
                .or(response, errors -> form(job, form, version == null ? null : id, errors, me, model));
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = forms.job(number);
        desk.removePart(job.id(), id, me.personId());
        return SiteForms.done(job, "The solid part is taken out.", redirect);
    }
}
