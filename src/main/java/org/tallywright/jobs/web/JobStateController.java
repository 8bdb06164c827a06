package org.tallywright.jobs.web;

import java.time.LocalDate;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Typed;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Moves a job from lead to running or lost, and takes it up again. */
@Controller
@RequestMapping("/jobs/{number}")
@Access(Role.OWNER)
class JobStateController {
    private final JobDesk desk;
    private final ShopClock clock;

    JobStateController(JobDesk desk, ShopClock clock) {
        this.desk = desk;
        this.clock = clock;
    }

    @PostMapping("/bidding")
    @Access({Role.OWNER, Role.LEAD})
    String bid(@PathVariable String number, SignedIn me, RedirectAttributes redirect) {
        desk.startBidding(desk.find(number).id(), me.personId());
        Flash.done(redirect, "The job is being bid.");
        return "redirect:/jobs/" + number;
    }

    /** The client said yes without a bid of ours; an accepted bid awards the job by itself. */
    @PostMapping("/award")
    String award(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String acceptedOn,
            @RequestParam(defaultValue = "") String note,
            SignedIn me,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        LocalDate on = acceptedOn.isBlank() ? clock.today() : Reader.day(acceptedOn);
        if (on.isAfter(clock.today())) {
            throw new Refused("A job cannot be accepted in the future.");
        }
        desk.award(job.id(), on, me.personId(), Typed.line(note, 300));
        Flash.done(redirect, "The job runs.");
        return "redirect:/jobs/" + number;
    }

    @PostMapping("/loss")
    String lose(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String reason,
            SignedIn me,
            RedirectAttributes redirect) {
        desk.lose(desk.find(number).id(), Typed.line(reason, 300), me.personId());
        Flash.done(redirect, "The job is lost. It can be reopened.");
        return "redirect:/jobs/" + number;
    }

    @PostMapping("/reopening")
    String reopen(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String reason,
            SignedIn me,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        if (reason.isBlank()) {
            throw new Refused("Say why the job is reopened; it stays in the record.");
        }
        desk.reopen(job.id(), Typed.requiredLine(reason, 300), me.personId());
        Flash.done(redirect, "The job is open again.");
        return "redirect:/jobs/" + number;
    }
}
