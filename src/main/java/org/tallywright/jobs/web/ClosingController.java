package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.Closing;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PunchDesk;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Typed;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The end of a job: what is still open, the walk-through, the closing. */
@Controller
@RequestMapping("/jobs/{number}")
@Access(Role.OWNER)
class ClosingController {
    private final JobDesk desk;
    private final JobPages pages;
    private final PunchDesk punch;
    private final EventRows events;
    private final ShopClock clock;

    ClosingController(JobDesk desk, JobPages pages, PunchDesk punch, EventRows events, ShopClock clock) {
        this.desk = desk;
        this.pages = pages;
        this.punch = punch;
        this.events = events;
        this.clock = clock;
    }

    @GetMapping("/closing")
    String show(@PathVariable String number, SignedIn me, Model model) {
        desk.find(number).guardOpen();
        return page(number, Map.of(), FormErrors.none(), blank(), me, model);
    }

    /** @param said the answers as sent, by the name of their field */
    private String page(
            String number, Map<String, String> said, FormErrors errors, Walk walk, SignedIn me, Model model) {
        JobPage page = pages.page(number, me);
        List<JobPage.TaskLine> open = page.stages().stream()
                .flatMap(stage -> stage.tasks().stream())
                .filter(JobPage.TaskLine::open)
                .toList();
        model.addAttribute("page", page);
        model.addAttribute("open", open);
        model.addAttribute(
                "items", page.punchList().stream().filter(i -> !i.ticked()).toList());
        model.addAttribute("walkThroughs", events.walkThroughs(page.head().job().id()));
        model.addAttribute("said", new Said(said));
        model.addAttribute("walk", walk);
        model.addAttribute("errors", errors);
        return "jobs/closing";
    }

    /** A walk-through as typed. */
    record Walk(UUID id, String walkedOn, String note, FormErrors errors) {}

    private Walk blank() {
        return new Walk(Ids.next(), clock.today().toString(), "", FormErrors.none());
    }

    /** What was answered, for the template: a name without an answer is empty. */
    record Said(Map<String, String> answers) {
        public String to(String name) {
            return answers.getOrDefault(name, "");
        }
    }

    @PostMapping("/closing")
    String close(
            @PathVariable String number,
            @RequestParam MultiValueMap<String, String> sent,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        try {
            desk.close(job.id(), closing(sent), me.personId());
            Flash.done(redirect, "The job is closed. Call-backs and punch list items can still be added.");
            return "redirect:/jobs/" + number;
        } catch (Refused refused) {
            Answer.refused(response);
            String field = refused.field() == null ? "" : refused.field();
            FormErrors errors = FormErrors.of(field, refused.sentence());
            return page(number, sent.toSingleValueMap(), errors, blank(), me, model);
        }
    }

    /** Answers come as {@code task-ID}; an unknown one is no answer. */
    private static Closing closing(MultiValueMap<String, String> sent) {
        Map<UUID, Closing.TaskAnswer> answers = new LinkedHashMap<>();
        sent.toSingleValueMap().forEach((name, value) -> {
            if (name.matches("task-[0-9a-fA-F-]{36}")) {
                answer(value).ifPresent(a -> answers.put(Reader.id(name.substring(5), "Reload the page."), a));
            }
        });
        return new Closing(answers, sent.containsKey("punchItemsStay"), sent.containsKey("withoutWalkThrough"));
    }

    private static Optional<Closing.TaskAnswer> answer(String value) {
        return switch (value) {
            case "done" -> Optional.of(Closing.TaskAnswer.DONE);
            case "never" -> Optional.of(Closing.TaskAnswer.NEVER_NEEDED);
            case "dropped" -> Optional.of(Closing.TaskAnswer.DROPPED);
            default -> Optional.empty();
        };
    }

    @PostMapping("/walk-throughs")
    @Access({Role.OWNER, Role.LEAD})
    String walkThrough(
            @PathVariable String number,
            @RequestParam UUID id,
            @RequestParam(defaultValue = "") String walkedOn,
            @RequestParam(defaultValue = "") String note,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        FormReader read = new FormReader();
        LocalDate on = read.field("walkedOn", () -> walkedOn.isBlank() ? clock.today() : Reader.day(walkedOn));
        String words = read.field("note", () -> Typed.line(note, 300));
        if (on != null && words != null) {
            try {
                punch.walkThrough(job.id(), id, on, words, me.personId());
                Flash.done(redirect, "The walk-through is recorded.");
                return me.is(Role.OWNER) ? "redirect:/jobs/" + number + "/closing" : "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        Answer.refused(response);
        Walk walk = new Walk(id, walkedOn, note, read.errors());
        return page(number, Map.of(), FormErrors.none(), walk, me, model);
    }
}
