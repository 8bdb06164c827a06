package org.tallywright.estimates.web;

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
import org.tallywright.estimates.EstimateTasks;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

@Controller
@RequestMapping("/jobs/{number}/estimate/tasks")
@Access({Role.OWNER, Role.LEAD})
class TaskLineController {
    private final JobDesk jobs;
    private final EstimateTasks tasks;
    private final LineWords words;

    TaskLineController(JobDesk jobs, EstimateTasks tasks, LineWords words) {
        this.jobs = jobs;
        this.tasks = tasks;
        this.words = words;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, @RequestParam @Nullable String piece, Model model) {
        return page(jobs.find(number), TaskLineForm.blank(piece), FormErrors.none(), model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, Model model) {
        JobRef job = jobs.find(number);
        EstimateTasks.Line line = tasks.find(job.id(), id).orElseThrow(() -> new NotHere("task"));
        return page(job, TaskLineForm.of(line), FormErrors.none(), model);
    }

    @PostMapping
    String create(
            @PathVariable String number,
            TaskLineForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        EstimateTasks.Draft draft = form.read(read);
        if (draft != null) {
            try {
                tasks.save(job.id(), draft, me.personId());
                Flash.done(redirect, "Task kept.");
                return "redirect:/jobs/" + job.number() + "/estimate" + (form.another() ? "/tasks/new" : "#tasks");
            } catch (Refused refused) {
                read.refuse(refused);
            } catch (Stale stale) {
                throw new Stale(stale.what(), beside(job, form));
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(job, form, read.errors(), model);
    }

    private List<Stale.Row> beside(JobRef job, TaskLineForm form) {
        UUID id = Picked.own(form.id());
        EstimateTasks.Line kept = tasks.find(job.id(), id).orElseThrow(() -> new NotHere("task"));
        return form.beside(TaskLineForm.of(kept), words.pieces(job.id()));
    }

    @PostMapping("/{id}/dropping")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        tasks.drop(job.id(), id, me.personId());
        Flash.done(redirect, "Task left out.");
        return "redirect:/jobs/" + job.number() + "/estimate#tasks";
    }

    private String page(JobRef job, TaskLineForm form, FormErrors errors, Model model) {
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute(
                "line",
                form.id() == null ? null : tasks.find(job.id(), form.id()).orElse(null));
        model.addAttribute("kinds", words.kinds());
        model.addAttribute("pieces", words.pieces(job.id()));
        return "estimates/task";
    }
}
