package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.TaskDesk;
import org.tallywright.jobs.TaskDetails;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The tasks of a job: add, show, change. */
@Controller
@RequestMapping("/jobs/{number}/tasks")
@Access({Role.OWNER, Role.LEAD})
class TaskController {
    private final JobDesk desk;
    private final JobHeads heads;
    private final JobPages pages;
    private final TaskDesk tasks;
    private final TaskRows rows;

    TaskController(JobDesk desk, JobHeads heads, JobPages pages, TaskDesk tasks, TaskRows rows) {
        this.desk = desk;
        this.heads = heads;
        this.pages = pages;
        this.tasks = tasks;
        this.rows = rows;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, @RequestParam(defaultValue = "") String piece, SignedIn me, Model model) {
        return form(desk.find(number).guardOpen(), TaskForm.blank(piece), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{id}")
    @Access({Role.OWNER, Role.LEAD, Role.HELPER})
    String show(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        model.addAttribute("page", pages.task(number, id, me));
        return "jobs/task";
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = desk.find(number).guardOpen();
        return form(job, rows.form(job.id(), id), id, FormErrors.none(), me, model);
    }

    private String form(JobRef job, TaskForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("choices", rows.choices(job.id()));
        model.addAttribute("errors", errors);
        return "jobs/task-form";
    }

    @PostMapping
    String create(
            @PathVariable String number,
            TaskForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return save(number, Reader.own(form.id()), null, form, me, model, response, redirect);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable String number,
            @PathVariable UUID id,
            TaskForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        int version = form.version() == null ? -1 : form.version();
        return save(number, id, version, form, me, model, response, redirect);
    }

    private String save(
            String number,
            UUID id,
            @Nullable Integer version,
            TaskForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        return new FormSave<TaskDetails>(form::read)
                .keeping(details -> {
                    tasks.save(job.id(), id, version, details, me.personId());
                    Flash.done(redirect, version == null ? "The task is added." : "The task is changed.");
                    return version == null ? "redirect:/jobs/" + number : "redirect:/jobs/" + number + "/tasks/" + id;
                })
                .beside(() -> form.beside(rows.form(job.id(), id), rows.choices(job.id())))
                .or(response, errors -> form(job, form, version == null ? null : id, errors, me, model));
    }
}
