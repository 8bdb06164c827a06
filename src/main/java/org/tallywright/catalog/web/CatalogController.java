package org.tallywright.catalog.web;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.Materials;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.Stages;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The first page of the catalogue. */
@Controller
@RequestMapping("/catalog")
@Access({Role.OWNER, Role.LEAD})
class CatalogController {
    private final Stages stages;
    private final TaskKinds taskKinds;
    private final PieceKinds pieceKinds;
    private final Materials materials;
    private final CatalogSeed seed;

    CatalogController(
            Stages stages, TaskKinds taskKinds, PieceKinds pieceKinds, Materials materials, CatalogSeed seed) {
        this.stages = stages;
        this.taskKinds = taskKinds;
        this.pieceKinds = pieceKinds;
        this.materials = materials;
        this.seed = seed;
    }

    @GetMapping
    String show(Model model, SignedIn me) {
        model.addAttribute("edits", me.is(Role.OWNER));
        model.addAttribute("stages", stages.active().size());
        model.addAttribute("taskKinds", taskKinds.active().size());
        model.addAttribute("pieceKinds", pieceKinds.active().size());
        model.addAttribute("materials", materials.active().size());
        model.addAttribute("isEmpty", stages.all().isEmpty());
        return "catalog/show";
    }

    @PostMapping("/starting-catalogue")
    @Access(Role.OWNER)
    String createStart(SignedIn me, RedirectAttributes redirect) {
        boolean loaded = seed.load(me.personId());
        Flash.done(
                redirect,
                loaded
                        ? "The starting catalogue is in. Change what differs in your shop."
                        : "There is a catalogue already.");
        return "redirect:/catalog";
    }
}
