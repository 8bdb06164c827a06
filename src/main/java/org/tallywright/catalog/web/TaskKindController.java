package org.tallywright.catalog.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
import org.tallywright.catalog.SaveTaskKind;
import org.tallywright.catalog.StageCard;
import org.tallywright.catalog.Stages;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKindDesk;
import org.tallywright.catalog.TaskKindMerging;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Unit;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.Search;
import org.tallywright.web.SignedIn;

/** The task kinds by stage, one of them, and its form. */
@Controller
@RequestMapping("/catalog/task-kinds")
@Access(Role.OWNER)
class TaskKindController {
    private final TaskKinds taskKinds;
    private final TaskKindDesk desk;
    private final TaskKindMerging merging;
    private final Stages stages;
    private final ShopClock clock;

    TaskKindController(
            TaskKinds taskKinds, TaskKindDesk desk, TaskKindMerging merging, Stages stages, ShopClock clock) {
        this.taskKinds = taskKinds;
        this.desk = desk;
        this.merging = merging;
        this.stages = stages;
        this.clock = clock;
    }

    @GetMapping
    @Access({Role.OWNER, Role.LEAD})
    String index(@RequestParam(defaultValue = "") String q, Model model, SignedIn me, HttpServletResponse response) {
        Search search = Search.of(q, response);
        List<TaskKindCard> all = taskKinds.all();
        List<TaskKindCard> found = all.stream()
                .filter(kind -> kind.merge() == null)
                .filter(kind -> search.finds(kind.name() + " " + kind.stageName()))
                .toList();
        model.addAttribute("tabs", CatalogTabs.at(CatalogTabs.TASK_KINDS));
        model.addAttribute(
                "groups",
                TaskKindGroup.of(found.stream().filter(TaskKindCard::active).toList()));
        model.addAttribute(
                "retired", found.stream().filter(kind -> !kind.active()).toList());
        model.addAttribute("q", search.typed());
        model.addAttribute("search", search);
        model.addAttribute("isEmpty", all.isEmpty());
        model.addAttribute("found", found.size());
        model.addAttribute("edits", me.is(Role.OWNER));
        return "catalog/task-kinds";
    }

    @GetMapping("/{id}")
    @Access({Role.OWNER, Role.LEAD})
    String show(@PathVariable UUID id, Model model, SignedIn me) {
        return page(id, me, "", FormErrors.none(), model);
    }

    private String page(UUID id, SignedIn me, String into, FormErrors errors, Model model) {
        model.addAttribute("page", TaskKindPage.of(taskKinds.card(id), taskKinds.all(), clock));
        model.addAttribute("edits", me.is(Role.OWNER));
        model.addAttribute("into", into);
        model.addAttribute("errors", errors);
        return "catalog/task-kind";
    }

    @GetMapping("/new")
    String blank(Model model) {
        return form(TaskKindForm.blank(Ids.next()), null, FormErrors.none(), model);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        TaskKindCard kind = taskKinds.card(id);
        return form(TaskKindForm.of(kind), kind, FormErrors.none(), model);
    }

    @PostMapping
    String create(
            TaskKindForm form, SignedIn me, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        return save(form.id() == null ? Ids.next() : form.id(), null, form, me, model, response, redirect);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable UUID id,
            TaskKindForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return save(id, taskKinds.card(id), form, me, model, response, redirect);
    }

    @PostMapping("/{id}/retirement")
    String retire(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.use(id, false, me.personId());
        Flash.done(redirect, "Out of use. Jobs that have it keep it.");
        return "redirect:/catalog/task-kinds/" + id;
    }

    @PostMapping("/{id}/return")
    String bringBack(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.use(id, true, me.personId());
        Flash.done(redirect, "Back in use.");
        return "redirect:/catalog/task-kinds/" + id;
    }

    /** Counts it as another kind from now on. */
    @PostMapping("/{id}/merging")
    String merge(
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable Integer version,
            @RequestParam(defaultValue = "") String into,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        UUID other = read.field("into", () -> Picked.id(into));
        if (other != null) {
            try {
                merging.merge(id, version, other, me.personId());
                Flash.done(redirect, "Counted as one from now on. A new calibration is being made.");
                return "redirect:/catalog/task-kinds/" + other;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return page(id, me, into, read.errors(), model);
    }

    @PostMapping("/{id}/parting")
    String part(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        merging.part(id, me.personId());
        Flash.done(redirect, "A kind of its own again, and in use. A new calibration is being made.");
        return "redirect:/catalog/task-kinds/" + id;
    }

    private String save(
            UUID id,
            @Nullable TaskKindCard kept,
            TaskKindForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        SaveTaskKind save = form.read(id, read);
        if (save != null) {
            try {
                desk.save(save, me.personId());
                Flash.done(redirect, "Saved.");
                return "redirect:/catalog/task-kinds/" + id;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return form(form, kept, read.errors(), model);
    }

    private String form(TaskKindForm form, @Nullable TaskKindCard kept, FormErrors errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        model.addAttribute("stages", stages(form));
        model.addAttribute("units", units());
        model.addAttribute("places", places());
        model.addAttribute("classes", classes());
        model.addAttribute(
                "groups",
                TaskKindGroup.of(taskKinds.active().stream()
                        .filter(other -> !other.id().equals(form.id()))
                        .toList()));
        return "catalog/task-kind-form";
    }

    /** The stages in use, and the one that is chosen though it is not. */
    private Map<String, String> stages(TaskKindForm form) {
        Map<String, String> options = new LinkedHashMap<>();
        for (StageCard stage : stages.all()) {
            String id = stage.id().toString();
            if (stage.active() || id.equals(form.stage())) {
                options.put(id, stage.name());
            }
        }
        return options;
    }

    private static Map<String, String> units() {
        Map<String, String> options = new LinkedHashMap<>();
        for (Unit unit : Unit.values()) {
            options.put(
                    unit.code(), unit.code().equals(unit.label()) ? unit.code() : unit.code() + ", " + unit.label());
        }
        return options;
    }

    private static Map<String, String> places() {
        Map<String, String> options = new LinkedHashMap<>();
        options.put("shop", "In the shop");
        options.put("site", "On site");
        return options;
    }

    private static Map<String, String> classes() {
        Map<String, String> options = new LinkedHashMap<>();
        for (HourClass hourClass : HourClass.values()) {
            options.put(hourClass.code(), hourClass.label());
        }
        return options;
    }
}
