package org.tallywright.takeoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.takeoff.PartDetails;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.takeoff.TakeoffDesk;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Pastes a list of parts: shown first, kept when confirmed. */
@Controller
@RequestMapping("/jobs/{number}/pieces/{id}/pasted-parts")
@Access({Role.OWNER, Role.LEAD})
class PasteController {
    private final JobDesk jobs;
    private final JobHeads heads;
    private final PieceFacts pieces;
    private final TakeoffDesk desk;
    private final Materials materials;
    private final ShopConventions shop;

    PasteController(
            JobDesk jobs,
            JobHeads heads,
            PieceFacts pieces,
            TakeoffDesk desk,
            Materials materials,
            ShopConventions shop) {
        this.jobs = jobs;
        this.heads = heads;
        this.pieces = pieces;
        this.desk = desk;
        this.materials = materials;
        this.shop = shop;
    }

    record Row(String name, int quantity, String size, String more) {}

    @GetMapping
    String blank(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        return page(jobs.find(number).guardOpen(), id, Ids.next(), "", FormErrors.none(), me, model);
    }

    private String page(JobRef job, UUID pieceId, UUID form, String text, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("piece", pieces.of(job.id(), pieceId));
        model.addAttribute("form", form);
        model.addAttribute("text", text);
        model.addAttribute("errors", errors);
        return "takeoff/paste";
    }

    @PostMapping("/preview")
    String preview(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam UUID form,
            @RequestParam(defaultValue = "") String text,
            SignedIn me,
            Model model,
            HttpServletResponse response) {
        JobRef job = jobs.find(number).guardOpen();
        FormErrors errors = FormErrors.none();
        read(text, errors, model, response);
        return page(job, id, form, text, errors, me, model);
    }

    private List<PartDetails> read(String text, FormErrors errors, Model model, HttpServletResponse response) {
        try {
            PartsPaste pasted = PartsPaste.read(text, shop.units(), byName());
            model.addAttribute("rows", pasted.parts().stream().map(this::row).toList());
            model.addAttribute("wrong", pasted.errors().stream().limit(30).toList());
            if (!pasted.errors().isEmpty()) {
                response.setStatus(422);
                errors.put("text", pasted.errors().size() + " cells cannot be read; put them right and look again.");
                return List.of();
            }
            if (pasted.parts().isEmpty()) {
                throw new Refused("text", "There is no line below the headings.");
            }
            return pasted.parts();
        } catch (Refused refused) {
            response.setStatus(422);
            errors.put("text", refused.sentence());
            return List.of();
        }
    }

    private Row row(PartDetails part) {
        return new Row(
                part.name(),
                part.quantity(),
                Written.size(part.length(), shop.units()) + " x " + Written.size(part.width(), shop.units()),
                Written.more(part));
    }

    private Map<String, UUID> byName() {
        Map<String, UUID> byName = new HashMap<>();
        materials.active().forEach(card -> {
            byName.put(card.name().toLowerCase(Locale.ROOT), card.id());
            byName.put(card.code(), card.id());
        });
        return byName;
    }

    @PostMapping
    String create(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam UUID form,
            @RequestParam(defaultValue = "") String text,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number).guardOpen();
        FormErrors errors = FormErrors.none();
        List<PartDetails> parts = read(text, errors, model, response);
        if (errors.isEmpty()) {
            try {
                desk.addAll(job.id(), id, form, parts, me.personId());
                Flash.done(
                        redirect,
                        parts.size() == 1
                                ? "One line of parts is added."
                                : parts.size() + " lines of parts are added.");
                return "redirect:/jobs/" + number + "/pieces/" + id + "/parts";
            } catch (Refused refused) {
                response.setStatus(422);
                errors.put("text", refused.sentence());
            }
        }
        return page(job, id, form, text, errors, me, model);
    }
}
