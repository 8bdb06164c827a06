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
import org.tallywright.jobs.JobRef;
import org.tallywright.measuring.AirDetails;
import org.tallywright.measuring.SiteDesk;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The air at the site, as read on a day. */
@Controller
@RequestMapping("/jobs/{number}/air-readings")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class AirController {
    private final SiteForms forms;
    private final SiteDesk desk;
    private final SitePages pages;
    private final ShopClock clock;

    AirController(SiteForms forms, SiteDesk desk, SitePages pages, ShopClock clock) {
        this.forms = forms;
        this.desk = desk;
        this.pages = pages;
        this.clock = clock;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, SignedIn me, Model model) {
        JobRef job = forms.openJob(number);
        return form(job, AirForm.blank(clock.today()), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = forms.openJob(number);
        return form(job, kept(job, id), id, FormErrors.none(), me, model);
    }

    private AirForm kept(JobRef job, UUID id) {
        SiteDesk.Kept<AirDetails> kept = desk.air(job.id(), id);
        return AirForm.of(id, kept.version(), kept.details(), new Figures(pages.units()));
    }

    private String form(JobRef job, AirForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        return forms.page("air", job, form, kept, errors, me, model);
    }

    @PostMapping
    String create(
            @PathVariable String number,
            AirForm form,
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
            AirForm form,
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
            AirForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = forms.job(number);
        return new FormSave<AirDetails>(read -> form.read(read, pages.units()))
                .keeping(details -> {
                    desk.save(job.id(), id, version, details, me.personId());
                    return SiteForms.done(job, "The air is written down.", redirect);
                })
                .beside(() -> form.beside(kept(job, id)))
                .or(response, errors -> form(job, form, version == null ? null : id, errors, me, model));
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = forms.job(number);
        desk.removeAir(job.id(), id, me.personId());
        return SiteForms.done(job, "The reading of the air is taken out.", redirect);
    }
}
