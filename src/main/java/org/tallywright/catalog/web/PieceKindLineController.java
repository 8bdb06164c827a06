package org.tallywright.catalog.web;

import jakarta.servlet.http.HttpServletResponse;
import java.math.BigDecimal;
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
import org.tallywright.catalog.FactorInUse;
import org.tallywright.catalog.Measure;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindDesk;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;

/** One proposed task of a kind of piece; a task kind stands there once, so that its id names the line. */
@Controller
@RequestMapping("/catalog/piece-kinds/{id}/tasks")
@Access(Role.OWNER)
class PieceKindLineController {
    private final PieceKinds pieceKinds;
    private final PieceKindDesk desk;
    private final TaskKinds taskKinds;
    private final ShopConventions shop;

    PieceKindLineController(PieceKinds pieceKinds, PieceKindDesk desk, TaskKinds taskKinds, ShopConventions shop) {
        this.pieceKinds = pieceKinds;
        this.desk = desk;
        this.taskKinds = taskKinds;
        this.shop = shop;
    }

    @GetMapping("/new")
    String blank(@PathVariable UUID id, Model model) {
        PieceKindCard kind = pieceKinds.card(id);
        return form(kind, null, new LineForm(kind.version(), "", "face", "", ""), FormErrors.none(), model);
    }

    @PostMapping
    String create(
            @PathVariable UUID id,
            LineForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        PieceKindCard kind = pieceKinds.card(id);
        FormReader read = new FormReader();
        TaskKindCard taskKind = read.field("taskKind", () -> chosen(form.taskKind()));
        return save(kind, null, taskKind, form, read, model, response, redirect);
    }

    @GetMapping("/{taskKindId}")
    String edit(@PathVariable UUID id, @PathVariable UUID taskKindId, Model model) {
        PieceKindCard kind = pieceKinds.card(id);
        PieceKindLine line = line(kind, taskKindId);
        TaskKindCard taskKind = taskKinds.card(taskKindId);
        LineForm form = new LineForm(
                kind.version(),
                taskKindId.toString(),
                line.measure().code(),
                factor(line.measure(), taskKind).shown(line.factor()).toPlainString(),
                String.valueOf(line.roundUp()));
        return form(kind, taskKind, form, FormErrors.none(), model);
    }

    @PostMapping("/{taskKindId}")
    String update(
            @PathVariable UUID id,
            @PathVariable UUID taskKindId,
            LineForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        PieceKindCard kind = pieceKinds.card(id);
        TaskKindCard taskKind = taskKinds.card(taskKindId);
        return save(kind, taskKind, taskKind, form, new FormReader(), model, response, redirect);
    }

    @PostMapping("/{taskKindId}/removal")
    String destroy(
            @PathVariable UUID id,
            @PathVariable UUID taskKindId,
            @RequestParam(required = false) @Nullable Integer version,
            RedirectAttributes redirect) {
        desk.remove(id, version, taskKindId);
        Flash.done(redirect, "No longer proposed.");
        return "redirect:/catalog/piece-kinds/" + id;
    }

    private String save(
            PieceKindCard kind,
            @Nullable TaskKindCard kept,
            @Nullable TaskKindCard taskKind,
            LineForm form,
            FormReader read,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Measure measure = read.field("measure", () -> Measure.of(Picked.text(form.measure())));
        BigDecimal typed = read.field("factor", () -> number(Picked.text(form.factor())));
        if (taskKind != null && measure != null && typed != null && !read.refused()) {
            try {
                BigDecimal factor = unchanged(kind, taskKind, measure, typed);
                boolean roundUp = "true".equals(form.roundUp());
                desk.put(kind.id(), form.version(), new PieceKindLine(taskKind.id(), measure, factor, roundUp));
                Flash.done(redirect, "Saved.");
                return "redirect:/catalog/piece-kinds/" + kind.id();
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return form(kind, kept, form, read.errors(), model);
    }

    /** A factor that was shown rounded and sent back as it was shown stays what it is. */
    private BigDecimal unchanged(PieceKindCard kind, TaskKindCard taskKind, Measure measure, BigDecimal typed) {
        FactorInUse factor = factor(measure, taskKind);
        return kind.lines().stream()
                .filter(line -> line.taskKindId().equals(taskKind.id()) && line.measure() == measure)
                .map(PieceKindLine::factor)
                .filter(there -> factor.shown(there).compareTo(typed) == 0)
                .findFirst()
                .orElseGet(() -> factor.kept(typed));
    }

    /** To five places, one more than quantities have: a factor is small where its unit is large. */
    private static BigDecimal number(String typed) {
        try {
            if (typed.chars().noneMatch(Character::isLetter)) {
                return UnitHours.of(typed).amount();
            }
        } catch (NotUnderstood notANumber) {
            // The one sentence below serves both.
        }
        throw new NotUnderstood("The factor is a number, such as 2.25.");
    }

    private TaskKindCard chosen(@Nullable String typed) {
        return taskKinds
                .find(Picked.id(typed, "Choose a task kind."))
                .orElseThrow(() -> new Refused("Choose a task kind."));
    }

    private static PieceKindLine line(PieceKindCard kind, UUID taskKindId) {
        return kind.lines().stream()
                .filter(line -> line.taskKindId().equals(taskKindId))
                .findFirst()
                .orElseThrow(() -> new NotHere("proposed task"));
    }

    private FactorInUse factor(Measure measure, TaskKindCard taskKind) {
        return new FactorInUse(measure, taskKind.unit(), shop.units());
    }

    private String form(
            PieceKindCard kind, @Nullable TaskKindCard taskKind, LineForm form, FormErrors errors, Model model) {
        List<UUID> there = kind.lines().stream().map(PieceKindLine::taskKindId).toList();
        Map<String, String> choices = new LinkedHashMap<>();
        taskKinds.active().stream()
                .filter(other -> !there.contains(other.id()))
                .forEach(other -> choices.put(
                        other.id().toString(),
                        other.stageName() + ": " + other.name() + ", "
                                + other.unit().code()));
        Map<String, String> measures = new LinkedHashMap<>();
        for (Measure measure : Measure.values()) {
            FactorInUse factor = new FactorInUse(measure, Unit.EACH, shop.units());
            measures.put(measure.code(), measure == Measure.JOB ? measure.label() : "for each " + factor.per());
        }
        model.addAttribute("kind", kind);
        model.addAttribute("taskKind", taskKind);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("choices", choices);
        model.addAttribute("measures", measures);
        return "catalog/piece-kind-task-form";
    }

    /** A proposed task as typed; the version is that of the kind of piece. */
    record LineForm(
            @Nullable Integer version,
            @Nullable String taskKind,
            @Nullable String measure,
            @Nullable String factor,
            @Nullable String roundUp) {}
}
