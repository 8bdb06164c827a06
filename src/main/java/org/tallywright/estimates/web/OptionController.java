package org.tallywright.estimates.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.OfferAgain;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Which lines of an estimate the client may take or leave together. */
@Controller
@RequestMapping("/jobs/{number}/estimate/options")
@Access(Role.OWNER)
class OptionController {
    private final JobDesk jobs;
    private final OptionDesk desk;
    private final OfferAgain again;
    private final EstimatePricer pricer;

    OptionController(JobDesk jobs, OptionDesk desk, OfferAgain again, EstimatePricer pricer) {
        this.jobs = jobs;
        this.desk = desk;
        this.again = again;
        this.pricer = pricer;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, Model model) {
        return page(jobs.find(number), OptionForm.blank(), FormErrors.none(), model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, Model model) {
        JobRef job = jobs.find(number);
        OptionForm form = desk.find(job.id(), id)
                .map(option -> OptionForm.of(option, pricer.sheet(job.id()).option(id)))
                .orElseThrow(() -> new NotHere("option"));
        return page(job, form, FormErrors.none(), model);
    }

    @PostMapping
    String create(
            @PathVariable String number,
            OptionForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        OptionDraft draft = form.read(read);
        if (draft != null) {
            try {
                desk.save(job.id(), draft, me.personId());
                Flash.done(redirect, "Option kept. It is priced by itself, beside the price of the rest.");
                return "redirect:/jobs/" + job.number() + "/estimate#options";
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(job, form, read.errors(), model);
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        desk.remove(job.id(), id, me.personId());
        Flash.done(redirect, "The option is gone; its lines are in the bid itself again.");
        return "redirect:/jobs/" + job.number() + "/estimate#options";
    }

    /** What the client left out is in the next change order. */
    @PostMapping("/{id}/offer")
    String offer(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        String name = again.offer(job.id(), id, me.personId());
        Flash.done(redirect, name + " is in this change order, at today's wages and prices. Nothing is issued yet.");
        redirect.addAttribute("about", name);
        return "redirect:/jobs/" + job.number() + "/bids/new";
    }

    /** Lines that can still be moved: neither agreed nor out in a change order. */
    private String page(JobRef job, OptionForm form, FormErrors errors, Model model) {
        EstimateSheet sheet = pricer.sheet(job.id());
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute(
                "tasks", sheet.tasks().stream().filter(t -> t.lot().isFree()).toList());
        model.addAttribute(
                "materials",
                sheet.materials().stream().filter(m -> m.lot().isFree()).toList());
        model.addAttribute(
                "others", sheet.others().stream().filter(o -> o.lot().isFree()).toList());
        return "estimates/option";
    }
}
