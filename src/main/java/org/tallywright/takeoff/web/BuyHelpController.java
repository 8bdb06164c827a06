package org.tallywright.takeoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.materials.HeldOffcuts;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.takeoff.BuyLine;
import org.tallywright.takeoff.BuyLister;
import org.tallywright.takeoff.MaterialShape;
import org.tallywright.takeoff.MaterialShapes;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** What is set right from the buy list itself: the lengths a dealer sells, and the offcuts held for the job. */
@Controller
@RequestMapping("/jobs/{number}/buy-list")
class BuyHelpController {
    private final JobDesk jobs;
    private final BuyPages pages;
    private final BuyLister lister;
    private final Materials materials;
    private final MaterialShapes shapes;
    private final HeldOffcuts held;
    private final ShopConventions shop;

    BuyHelpController(
            JobDesk jobs,
            BuyPages pages,
            BuyLister lister,
            Materials materials,
            MaterialShapes shapes,
            HeldOffcuts held,
            ShopConventions shop) {
        this.jobs = jobs;
        this.pages = pages;
        this.lister = lister;
        this.materials = materials;
        this.shapes = shapes;
        this.held = held;
        this.shop = shop;
    }

    @PostMapping("/lengths")
    @Access(Role.OWNER)
    String lengths(
            @PathVariable String number,
            BuyPages.Lengths form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        UUID id = form.material();
        if (id == null) {
            throw new Refused("The form did not arrive whole. Reload the page and try again.");
        }
        MaterialCard card = materials.card(id);
        ShapeForm bar = ShapeForm.bar(form.barLengths(), form.kerf(), form.trim());
        return new FormSave<MaterialShape>(read -> bar.read(read, shop.units()))
                .keeping(shape -> {
                    shapes.write(id, null, shape, me.personId());
                    Flash.done(redirect, "The lengths are kept; " + card.name() + " is laid out on them.");
                    return "redirect:/jobs/" + job.number() + "/buy-list";
                })
                .or(response, errors -> pages.page(number, me, form, errors, model));
    }

    @PostMapping("/offcuts")
    @Access({Role.OWNER, Role.LEAD})
    String hold(@PathVariable String number, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        List<UUID> used = lister.of(job.id()).lines().stream()
                .flatMap(line -> line.offcuts().stream())
                .map(BuyLine.Offcut::id)
                .distinct()
                .toList();
        held.hold(job.id(), used, me.personId());
        Flash.done(
                redirect,
                used.size() == 1
                        ? "One offcut is held for this job; no other buy list counts on it."
                        : used.size() + " offcuts are held for this job; no other buy list counts on them.");
        return "redirect:/jobs/" + number + "/buy-list";
    }

    @PostMapping("/offcuts/{offcut}/removal")
    @Access({Role.OWNER, Role.LEAD})
    String releaseOne(
            @PathVariable String number, @PathVariable UUID offcut, SignedIn me, RedirectAttributes redirect) {
        held.release(jobs.find(number).id(), offcut, me.personId());
        Flash.done(redirect, "The offcut is free for any job again.");
        return "redirect:/jobs/" + number + "/buy-list";
    }

    @PostMapping("/offcuts/removal")
    @Access({Role.OWNER, Role.LEAD})
    String release(@PathVariable String number, SignedIn me, RedirectAttributes redirect) {
        held.hold(jobs.find(number).id(), List.of(), me.personId());
        Flash.done(redirect, "The offcuts are free for any job again.");
        return "redirect:/jobs/" + number + "/buy-list";
    }
}
