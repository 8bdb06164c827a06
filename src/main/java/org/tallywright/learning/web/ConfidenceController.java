package org.tallywright.learning.web;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.learning.EstimateOutlook;
import org.tallywright.shared.Refused;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** At which confidence a job's price is made. */
@Controller
@Access(Role.OWNER)
class ConfidenceController {
    private final JobDesk jobs;
    private final EstimateOutlook outlook;

    ConfidenceController(JobDesk jobs, EstimateOutlook outlook) {
        this.jobs = jobs;
        this.outlook = outlook;
    }

    @PostMapping("/jobs/{number}/estimate/confidence")
    String choose(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String percent,
            SignedIn me,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        int chosen = switch (percent) {
            case "50", "80", "90" -> Integer.parseInt(percent);
            case "0" -> 0;
            default -> throw new Refused("Choose one of the four.");
        };
        outlook.choose(job.id(), chosen, me.personId());
        Flash.done(redirect, "The price follows it.");
        return "redirect:/jobs/" + job.number() + "/estimate#price";
    }
}
