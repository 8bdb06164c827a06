package org.tallywright.takeoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.takeoff.PartDetails;
import org.tallywright.takeoff.PartRows;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.takeoff.TakeoffDesk;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** One part of a piece, written or changed by hand. */
@Controller
@RequestMapping("/jobs/{number}/pieces/{id}/parts")
@Access({Role.OWNER, Role.LEAD})
class OwnPartController {
    private final JobDesk jobs;
    private final JobHeads heads;
    private final PieceFacts pieces;
    private final PartRows rows;
    private final TakeoffDesk desk;
    private final MaterialNames materials;
    private final ShopConventions shop;

    OwnPartController(
            JobDesk jobs,
            JobHeads heads,
            PieceFacts pieces,
            PartRows rows,
            TakeoffDesk desk,
            MaterialNames materials,
            ShopConventions shop) {
        this.jobs = jobs;
        this.heads = heads;
        this.pieces = pieces;
        this.rows = rows;
        this.desk = desk;
        this.materials = materials;
        this.shop = shop;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        return form(jobs.find(number).guardOpen(), id, PartForm.blank(), null, FormErrors.none(), me, model);
    }

    @GetMapping("/{part}")
    String edit(@PathVariable String number, @PathVariable UUID id, @PathVariable UUID part, SignedIn me, Model model) {
        JobRef job = jobs.find(number).guardOpen();
        PartForm kept = PartForm.of(rows.of(job.id(), id, part), shop.units());
        return form(job, id, kept, part, FormErrors.none(), me, model);
    }

    private String form(
            JobRef job, UUID pieceId, PartForm form, @Nullable UUID kept, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("piece", pieces.of(job.id(), pieceId));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        model.addAttribute("materials", materials.byId());
        model.addAttribute("lengthUnit", Written.suffix(shop.units()));
        Map<String, String> grains = new LinkedHashMap<>();
        grains.put("along", "Along the length");
        grains.put("across", "Across the length");
        grains.put("any", "Does not matter");
        model.addAttribute("grains", grains);
        return "takeoff/part";
    }

    @PostMapping
    String create(
            @PathVariable String number,
            @PathVariable UUID id,
            PartForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UUID partId = form.id();
        if (partId == null) {
            throw new Refused("The form did not arrive whole. Reload the page and try again.");
        }
        return save(jobs.find(number), id, partId, null, "", form, me, model, response, redirect);
    }

    @PostMapping("/{part}")
    String update(
            @PathVariable String number,
            @PathVariable UUID id,
            @PathVariable UUID part,
            PartForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        String slot = rows.of(job.id(), id, part).details().slot();
        int version = form.version() == null ? -1 : form.version();
        return save(job, id, part, version, slot, form, me, model, response, redirect);
    }

    private String save(
            JobRef job,
            UUID pieceId,
            UUID partId,
            @Nullable Integer version,
            String slot,
            PartForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return new FormSave<PartDetails>(read -> form.read(read, shop.units(), slot))
                .keeping(details -> {
                    desk.save(job.id(), pieceId, partId, version, details, me.personId());
                    Flash.done(redirect, "The part is kept.");
                    return "redirect:/jobs/" + job.number() + "/pieces/" + pieceId + "/parts";
                })
                .beside(() -> {
                    PartForm theirs = PartForm.of(rows.of(job.id(), pieceId, partId), shop.units());
                    return form.beside(theirs, materials.byId());
                })
                .or(response, errors -> form(job, pieceId, form, version == null ? null : partId, errors, me, model));
    }

    @PostMapping("/{part}/removal")
    String destroy(
            @PathVariable String number,
            @PathVariable UUID id,
            @PathVariable UUID part,
            SignedIn me,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        pieces.of(job.id(), id);
        desk.remove(job.id(), id, part, me.personId());
        Flash.done(redirect, "The part is taken out.");
        return "redirect:/jobs/" + number + "/pieces/" + id + "/parts";
    }
}
