package org.tallywright.jobs.web;

import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.StageDesk;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Moves a job through its stages by hand; starting a task does it by itself. */
@Controller
@RequestMapping("/jobs/{number}/stages/{stage}")
@Access({Role.OWNER, Role.LEAD})
class StageController {
    private final JobDesk desk;
    private final StageDesk stages;

    StageController(JobDesk desk, StageDesk stages) {
        this.desk = desk;
        this.stages = stages;
    }

    @PostMapping("/entry")
    String enter(@PathVariable String number, @PathVariable UUID stage, SignedIn me, RedirectAttributes redirect) {
        stages.enter(desk.find(number).id(), stage, me.personId());
        return done(number, "The stage is entered.", redirect);
    }

    @PostMapping("/completion")
    String complete(@PathVariable String number, @PathVariable UUID stage, SignedIn me, RedirectAttributes redirect) {
        stages.done(desk.find(number).id(), stage, me.personId());
        return done(number, "The stage is done.", redirect);
    }

    @PostMapping("/skip")
    String skip(@PathVariable String number, @PathVariable UUID stage, SignedIn me, RedirectAttributes redirect) {
        stages.skip(desk.find(number).id(), stage, me.personId());
        return done(number, "The stage is skipped.", redirect);
    }

    @PostMapping("/reopening")
    String clear(@PathVariable String number, @PathVariable UUID stage, SignedIn me, RedirectAttributes redirect) {
        stages.clear(desk.find(number).id(), stage, me.personId());
        return done(number, "The stage is taken back.", redirect);
    }

    private static String done(String number, String sentence, RedirectAttributes redirect) {
        Flash.done(redirect, sentence);
        return "redirect:/jobs/" + number + "#stages";
    }
}
