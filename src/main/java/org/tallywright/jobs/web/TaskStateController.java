package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.Finish;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.ShopDates;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.jobs.Wait;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Starts a task, finishes it, drops it and takes that back. */
@Controller
@RequestMapping("/jobs/{number}/tasks/{id}")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class TaskStateController {
    private final JobDesk desk;
    private final JobPages pages;
    private final TaskDesk tasks;
    private final TaskRows rows;
    private final ShopClock clock;
    private final ShopDates dates;

    TaskStateController(JobDesk desk, JobPages pages, TaskDesk tasks, TaskRows rows, ShopClock clock, ShopDates dates) {
        this.desk = desk;
        this.pages = pages;
        this.tasks = tasks;
        this.rows = rows;
        this.clock = clock;
        this.dates = dates;
    }

    @PostMapping("/start")
    String start(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        TaskPage page = pages.task(number, id, me);
        tasks.start(job.id(), id, me.personId());
        String advice = page.line().advice();
        Flash.done(redirect, advice.isEmpty() ? "Started." : "Started. Usually first, and not done: " + advice + ".");
        return "redirect:/jobs/" + number;
    }

    @GetMapping("/completion")
    String completion(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = desk.find(number).guardOpen();
        TaskPage page = pages.task(number, id, me);
        CompletionForm form =
                CompletionForm.blank(rows.version(job.id(), id), page.task().quantity(), clock);
        return completion(page, form, FormErrors.none(), model);
    }

    private static String completion(TaskPage page, CompletionForm form, FormErrors errors, Model model) {
        model.addAttribute("page", page);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "jobs/completion";
    }

    @PostMapping("/completion")
    String complete(
            @PathVariable String number,
            @PathVariable UUID id,
            CompletionForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        if (form.answer().equals(CompletionForm.NEVER)) {
            tasks.drop(job.id(), id, true, me.personId());
            Flash.done(redirect, "The task was never needed; it is out of the plan.");
            return "redirect:/jobs/" + number;
        }
        FormReader read = new FormReader();
        Finish finish = form.read(read, clock);
        if (finish != null) {
            try {
                int version = form.version() == null ? -1 : form.version();
                Flash.done(redirect, sentence(tasks.finish(job.id(), id, version, finish, me.personId())));
                return "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse(refused);
            } catch (Stale stale) {
                throw new Stale(stale.what(), form.beside(pages.task(number, id, me)));
            }
        }
        Answer.refused(response);
        return completion(pages.task(number, id, me), form, read.errors(), model);
    }

    private String sentence(List<Wait> waits) {
        return waits.isEmpty()
                ? "Done."
                : "Done. "
                        + waits.stream()
                                .map(w -> w.what() + " until " + dates.moment(w.endsAt()))
                                .collect(Collectors.joining("; "))
                        + ".";
    }

    @PostMapping("/dropping")
    @Access({Role.OWNER, Role.LEAD})
    String drop(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String neverNeeded,
            SignedIn me,
            RedirectAttributes redirect) {
        tasks.drop(desk.find(number).id(), id, neverNeeded.equals("true"), me.personId());
        Flash.done(redirect, "The task is dropped.");
        return "redirect:/jobs/" + number;
    }

    /** A mistaken finish or drop, taken back. */
    @PostMapping("/reopening")
    String reopen(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        tasks.reopen(desk.find(number).id(), id, me.personId());
        Flash.done(redirect, "The task is open again.");
        return "redirect:/jobs/" + number + "/tasks/" + id;
    }
}
