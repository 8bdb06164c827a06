package org.tallywright.estimates.web;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.estimates.EstimateDesk;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.estimates.web.WhatIfForm.Tried;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Refused;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Tries another confidence, crew or margin beside the price that stands, and takes it over when asked to. */
@Controller
@RequestMapping("/jobs/{number}/estimate/what-if")
@Access(Role.OWNER)
class WhatIfController {
    private final JobDesk jobs;
    private final EstimateDesk desk;
    private final EstimatePricer pricer;
    private final WhatIfPages pages;

    WhatIfController(JobDesk jobs, EstimateDesk desk, EstimatePricer pricer, WhatIfPages pages) {
        this.jobs = jobs;
        this.desk = desk;
        this.pricer = pricer;
        this.pages = pages;
    }

    @GetMapping
    String show(@PathVariable String number, WhatIfForm asked, Model model, HttpServletResponse response) {
        JobRef job = jobs.find(number);
        WorkingSum stands = pricer.of(job.id());
        WhatIfForm form = asked.filled(stands);
        FormReader read = new FormReader();
        Tried tried = pages.read(form, stands, read);
        if (tried != null) {
            try {
                return page(job, pages.tried(form, stands, tried), model);
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        return refused(job, pages.refused(form, stands, read.errors()), model, response);
    }

    @PostMapping
    String take(
            @PathVariable String number,
            WhatIfForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        WorkingSum stands = pricer.of(job.id());
        FormReader read = new FormReader();
        Tried tried = pages.read(form, stands, read);
        if (tried != null) {
            try {
                desk.price(job.id(), form.version(), tried.rates(), tried.confidence(), me.personId());
                Flash.done(redirect, "The estimate is priced like this now.");
                return "redirect:/jobs/" + job.number() + "/estimate#price";
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        return refused(job, pages.refused(form, stands, read.errors()), model, response);
    }

    private static String refused(JobRef job, WhatIfPage page, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(job, page, model);
    }

    private static String page(JobRef job, WhatIfPage page, Model model) {
        model.addAttribute("job", job);
        model.addAttribute("whatIf", page);
        return "estimates/whatif";
    }
}
