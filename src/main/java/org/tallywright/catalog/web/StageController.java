package org.tallywright.catalog.web;

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
import org.tallywright.catalog.SaveStage;
import org.tallywright.catalog.StageCard;
import org.tallywright.catalog.StageDesk;
import org.tallywright.catalog.Stages;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The stages in their order. */
@Controller
@RequestMapping("/catalog/stages")
@Access(Role.OWNER)
class StageController {
    private final Stages stages;
    private final StageDesk desk;

    StageController(Stages stages, StageDesk desk) {
        this.stages = stages;
        this.desk = desk;
    }

    @GetMapping
    @Access({Role.OWNER, Role.LEAD})
    String index(Model model, SignedIn me) {
        return list(new StageForm(Ids.next(), null, ""), FormErrors.none(), model, me);
    }

    @PostMapping
    String create(StageForm form, Model model, HttpServletResponse response, RedirectAttributes redirect, SignedIn me) {
        try {
            desk.save(form.save(form.id() == null ? Ids.next() : form.id()));
        } catch (Refused refused) {
            response.setStatus(422);
            return list(form, FormErrors.of("name", refused.sentence()), model, me);
        }
        Flash.done(redirect, "Stage added at the end; move it to its place.");
        return "redirect:/catalog/stages";
    }

    @GetMapping("/{id}")
    String edit(@PathVariable UUID id, Model model) {
        StageCard stage = stage(id);
        return form(stage, new StageForm(id, stage.version(), stage.name()), FormErrors.none(), model);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable UUID id,
            StageForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        StageCard stage = stage(id);
        try {
            desk.save(form.save(id));
        } catch (Refused refused) {
            response.setStatus(422);
            return form(stage, form, FormErrors.of("name", refused.sentence()), model);
        }
        Flash.done(redirect, "Saved.");
        return "redirect:/catalog/stages";
    }

    @PostMapping("/{id}/place")
    String move(@PathVariable UUID id, @RequestParam(defaultValue = "") String way) {
        if (!way.equals("up") && !way.equals("down")) {
            throw new Refused("A stage moves up or down.");
        }
        desk.move(id, way.equals("up"));
        return "redirect:/catalog/stages";
    }

    @PostMapping("/{id}/retirement")
    String retire(@PathVariable UUID id, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        StageCard stage = stage(id);
        try {
            desk.use(id, false);
        } catch (Refused refused) {
            response.setStatus(422);
            return form(
                    stage,
                    new StageForm(id, stage.version(), stage.name()),
                    FormErrors.of("", refused.sentence()),
                    model);
        }
        Flash.done(redirect, "Out of use. Jobs that have it keep it.");
        return "redirect:/catalog/stages";
    }

    @PostMapping("/{id}/return")
    String bringBack(@PathVariable UUID id, RedirectAttributes redirect) {
        desk.use(id, true);
        Flash.done(redirect, "Back in use.");
        return "redirect:/catalog/stages";
    }

    private StageCard stage(UUID id) {
        return stages.find(id).orElseThrow(() -> new NotHere("stage"));
    }

    private String list(StageForm form, FormErrors errors, Model model, SignedIn me) {
        model.addAttribute("tabs", CatalogTabs.at(CatalogTabs.STAGES));
        model.addAttribute("stages", stages.all());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("edits", me.is(Role.OWNER));
        return "catalog/stages";
    }

    private static String form(StageCard stage, StageForm form, FormErrors errors, Model model) {
        model.addAttribute("stage", stage);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "catalog/stage-form";
    }

    /** A stage as typed. */
    record StageForm(
            @Nullable UUID id,
            @Nullable Integer version,
            @Nullable String name) {
        SaveStage save(UUID savedId) {
            return new SaveStage(savedId, version, Picked.text(name));
        }
    }
}
