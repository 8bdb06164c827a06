package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
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
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Moves a job from lead to running or lost, and takes it up again. */
@Controller
@RequestMapping("/jobs/{number}")
@Access(Role.OWNER)
class JobStateController {
    private final JobDesk desk;
    private final JobPages pages;
    private final ShopClock clock;

    JobStateController(JobDesk desk, JobPages pages, ShopClock clock) {
        this.desk = desk;
        this.pages = pages;
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
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        FormReader read = new FormReader();
        LocalDate on = read.field("acceptedOn", () -> accepted(acceptedOn));
        String words = read.field("note", () -> Typed.line(note, 300));
        if (on != null && words != null) {
            try {
                desk.award(job.id(), on, me.personId(), words);
                Flash.done(redirect, "The job runs.");
                return "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        return again(number, Decision.award(acceptedOn, note, read.errors()), me, model, response);
    }

    private LocalDate accepted(String typed) {
        LocalDate on = typed.isBlank() ? clock.today() : Reader.day(typed);
        if (on.isAfter(clock.today())) {
            throw new Refused("A job cannot be accepted in the future.");
        }
        return on;
    }

    private String again(String number, Decision decision, SignedIn me, Model model, HttpServletResponse response) {
        Answer.refused(response);
        model.addAttribute("page", pages.page(number, me));
        model.addAttribute("decision", decision);
        return "jobs/show";
    }

    @PostMapping("/loss")
    String lose(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String reason,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        FormReader read = new FormReader();
        String words = read.field("reason", () -> Typed.line(reason, 300));
        if (words != null) {
            try {
                desk.lose(job.id(), words, me.personId());
                Flash.done(redirect, "The job is lost. It can be reopened.");
                return "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        return again(number, Decision.loss(reason, read.errors()), me, model, response);
    }

    @PostMapping("/reopening")
    String reopen(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String reason,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        FormReader read = new FormReader();
        String words = read.field("reason", () -> why(reason));
        if (words != null) {
            try {
                desk.reopen(job.id(), words, me.personId());
                Flash.done(redirect, "The job is open again.");
                return "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        return again(number, Decision.reopening(reason, read.errors()), me, model, response);
    }

    private static String why(String reason) {
        String words = Typed.line(reason, 300);
        if (words.isEmpty()) {
            throw new Refused("Say why the job is reopened; it stays in the record.");
        }
        return words;
    }
}
