package org.tallywright.measuring.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobRef;
import org.tallywright.measuring.OpeningDetails;
import org.tallywright.measuring.Reading;
import org.tallywright.measuring.SiteDesk;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** An opening and everything that was read of it; whoever works there writes it down. */
@Controller
@RequestMapping("/jobs/{number}/openings")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class OpeningController {
    private final SiteForms forms;
    private final SiteDesk desk;
    private final SitePages pages;
    private final ShopClock clock;

    OpeningController(SiteForms forms, SiteDesk desk, SitePages pages, ShopClock clock) {
        this.forms = forms;
        this.desk = desk;
        this.pages = pages;
        this.clock = clock;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, @RequestParam(defaultValue = "") String piece, SignedIn me, Model model) {
        JobRef job = forms.openJob(number);
        return form(job, OpeningForm.blank(piece, clock.today(), pages.units()), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = forms.openJob(number);
        return form(job, kept(job, id), id, FormErrors.none(), me, model);
    }

    private OpeningForm kept(JobRef job, UUID id) {
        SiteDesk.Kept<OpeningDetails> kept = desk.opening(job.id(), id);
        return OpeningForm.of(id, kept.version(), kept.details(), pages.units());
    }

    private String form(
            JobRef job, OpeningForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        for (Reading.Group group : Reading.Group.values()) {
            model.addAttribute(group.name().toLowerCase(java.util.Locale.ROOT), pages.boxes(group));
        }
        return forms.page("opening", job, form, kept, errors, me, model);
    }

    @PostMapping
    String create(
            @PathVariable String number,
            @RequestParam MultiValueMap<String, String> typed,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        OpeningForm form = OpeningForm.of(typed);
        return save(number, Reader.own(form.id()), null, form, me, model, response, redirect);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> typed,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        OpeningForm form = OpeningForm.of(typed);
        int version = form.version() == null ? -1 : form.version();
        return save(number, id, version, form, me, model, response, redirect);
    }

    private String save(
            String number,
            UUID id,
            @Nullable Integer version,
            OpeningForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = forms.job(number);
        return new FormSave<OpeningDetails>(read -> form.read(read, pages.units()))
                .keeping(details -> {
                    desk.save(job.id(), id, version, details, me.personId());
                    return SiteForms.done(job, details.place() + " is written down.", redirect);
                })
                .beside(() -> form.beside(kept(job, id), box -> pages.text("measuring.reading." + box)))
                .or(response, errors -> form(job, form, version == null ? null : id, errors, me, model));
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = forms.job(number);
        desk.removeOpening(job.id(), id, me.personId());
        return SiteForms.done(job, "The opening is taken out.", redirect);
    }
}
