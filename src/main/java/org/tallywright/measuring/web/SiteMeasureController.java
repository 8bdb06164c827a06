package org.tallywright.measuring.web;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The site measure of a job, on the screen and on paper. */
@Controller
@RequestMapping("/jobs/{number}/site-measure")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class SiteMeasureController {
    private final JobDesk jobs;
    private final JobHeads heads;
    private final SitePages pages;

    SiteMeasureController(JobDesk jobs, JobHeads heads, SitePages pages) {
        this.jobs = jobs;
        this.heads = heads;
        this.pages = pages;
    }

    @GetMapping
    String show(@PathVariable String number, SignedIn me, Model model) {
        JobRef job = jobs.find(number);
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("page", pages.of(job));
        return "measuring/show";
    }

    @GetMapping("/sheet")
    String sheet(@PathVariable String number, Model model) {
        JobRef job = jobs.find(number);
        model.addAttribute("job", job);
        model.addAttribute("page", pages.of(job));
        return "measuring/sheet";
    }
}
