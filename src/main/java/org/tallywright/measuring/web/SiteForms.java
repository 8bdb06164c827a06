package org.tallywright.measuring.web;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Units;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.SignedIn;

/** What the forms of a site measure have in common: the job above them, what they offer to pick from, the way back. */
@Component
class SiteForms {
    private final JobDesk jobs;
    private final JobHeads heads;
    private final SitePages pages;

    SiteForms(JobDesk jobs, JobHeads heads, SitePages pages) {
        this.jobs = jobs;
        this.heads = heads;
        this.pages = pages;
    }

    JobRef job(String number) {
        return jobs.find(number);
    }

    JobRef openJob(String number) {
        return jobs.find(number).guardOpen();
    }

    /**
     * @param kept id of what is kept already; null for something new
     * @return the view
     */
    String page(
            String view, JobRef job, Object form, @Nullable Object kept, FormErrors errors, SignedIn me, Model model) {
        boolean metric = pages.units() == Units.METRIC;
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        model.addAttribute("pieces", pages.choice(job.id()));
        model.addAttribute("lengthUnit", metric ? "mm" : "in");
        model.addAttribute("degrees", metric ? "\u00b0C" : "\u00b0F");
        return "measuring/" + view;
    }

    /** Back to the site measure, with a sentence. */
    static String done(JobRef job, String sentence, RedirectAttributes redirect) {
        Flash.done(redirect, sentence);
        return "redirect:/jobs/" + job.number() + "/site-measure";
    }
}
