package org.tallywright.costing.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.costing.JobCosts;
import org.tallywright.costing.JobFigures;
import org.tallywright.costing.Reviews;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobHeads;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Typed;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A job laid beside its bid: to date, or as frozen at a closing. */
@Controller
@RequestMapping("/jobs/{number}/review")
@Access(Role.OWNER)
class ReviewController {
    private static final int LONGEST_LESSON = 500;

    private final JobHeads heads;
    private final JobCosts costs;
    private final Reviews reviews;

    ReviewController(JobHeads heads, JobCosts costs, Reviews reviews) {
        this.heads = heads;
        this.costs = costs;
        this.reviews = reviews;
    }

    /** @param closing 1 for the first closing; without it the last one of a closed job, else the figures to date */
    @GetMapping
    String show(@PathVariable String number, @RequestParam @Nullable Integer closing, SignedIn me, Model model) {
        JobHead head = heads.find(number, me, "review");
        return page(head, closing, null, FormErrors.none(), model);
    }

    private String page(
            JobHead head, @Nullable Integer closing, @Nullable LessonForm typed, FormErrors errors, Model model) {
        UUID job = head.job().id();
        List<Reviews.Closed> closings = reviews.of(job);
        Reviews.Closed shown = shown(closings, closing, head.job().isClosed());
        JobFigures figures = shown == null ? costs.figures(job) : reviews.figures(shown.id());
        String base = "/jobs/" + head.job().number();
        model.addAttribute("head", head);
        model.addAttribute("page", ReviewWriter.write(figures, base));
        model.addAttribute("closings", closings.stream().map(ClosingRow::of).toList());
        model.addAttribute("shown", shown == null ? null : ClosingRow.of(shown));
        model.addAttribute("after", shown == null ? null : AfterClosing.of(reviews.after(job, shown), figures));
        model.addAttribute("form", typed != null ? typed : shown == null ? null : LessonForm.of(shown));
        model.addAttribute("errors", errors);
        return "costing/review";
    }

    private static Reviews.@Nullable Closed shown(
            List<Reviews.Closed> closings, @Nullable Integer asked, boolean closed) {
        if (asked != null) {
            return closings.stream()
                    .filter(c -> c.closing() == asked)
                    .findFirst()
                    .orElseThrow(() -> new NotHere("review"));
        }
        return closed && !closings.isEmpty() ? closings.get(0) : null;
    }

    @PostMapping("/lesson")
    String update(
            @PathVariable String number,
            LessonForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobHead head = heads.find(number, me, "review");
        UUID id = form.id();
        Reviews.Closed review = reviews.of(head.job().id()).stream()
                .filter(closed -> closed.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotHere("review"));
        FormReader read = new FormReader();
        String lesson = read.field("lesson", () -> Typed.line(form.typed(), LONGEST_LESSON));
        if (lesson == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(head, review.closing(), form, read.errors(), model);
        }
        int version = form.version() == null ? -1 : form.version();
        reviews.learn(head.job().id(), review.id(), version, lesson, me.personId());
        Flash.done(redirect, "The lesson is saved.");
        return "redirect:/jobs/" + head.job().number() + "/review?closing=" + review.closing();
    }
}
