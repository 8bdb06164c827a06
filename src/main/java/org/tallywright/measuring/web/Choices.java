package org.tallywright.measuring.web;

import org.springframework.ui.Model;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Units;

/** What the forms of a site measure offer to pick from, and the units behind their boxes. */
final class Choices {
    private Choices() {}

    static void add(Model model, JobRef job, SitePages pages) {
        boolean metric = pages.units() == Units.METRIC;
        model.addAttribute("pieces", pages.choice(job.id()));
        model.addAttribute("lengthUnit", metric ? "mm" : "in");
        model.addAttribute("degrees", metric ? "\u00b0C" : "\u00b0F");
    }
}
