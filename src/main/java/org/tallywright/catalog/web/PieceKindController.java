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
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindDesk;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.SavePieceKind;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Typed;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The kinds of piece, and what one proposes for sizes that can be tried on its page. */
@Controller
@RequestMapping("/catalog/piece-kinds")
@Access(Role.OWNER)
class PieceKindController {
    private final PieceKinds pieceKinds;
    private final PieceKindDesk desk;
    private final TaskKinds taskKinds;
    private final ShopConventions shop;

    PieceKindController(PieceKinds pieceKinds, PieceKindDesk desk, TaskKinds taskKinds, ShopConventions shop) {
        this.pieceKinds = pieceKinds;
        this.desk = desk;
        this.taskKinds = taskKinds;
        this.shop = shop;
    }

    @GetMapping
    @Access({Role.OWNER, Role.LEAD})
    String index(Model model, SignedIn me) {
        model.addAttribute("tabs", CatalogTabs.at(CatalogTabs.PIECE_KINDS));
        model.addAttribute("kinds", pieceKinds.all());
        model.addAttribute("edits", me.is(Role.OWNER));
        return "catalog/piece-kinds";
    }

    @GetMapping("/{id}")
    @Access({Role.OWNER, Role.LEAD})
    String show(@PathVariable UUID id, TrySizes sizes, Model model, HttpServletResponse response, SignedIn me) {
        PieceKindCard kind = pieceKinds.card(id);
        FormReader read = new FormReader();
        model.addAttribute("page", PieceKindPage.of(kind, taskKinds, sizes.read(read, shop.units()), pieceKinds, shop));
        model.addAttribute("sizes", sizes);
        model.addAttribute("errors", read.errors());
        model.addAttribute("edits", me.is(Role.OWNER));
        if (read.refused()) {
            response.setStatus(422);
        }
        return "catalog/piece-kind";
    }

    @GetMapping("/new")
    String blank(Model model) {
        return form(new PieceKindForm(Ids.next(), null, "", ""), null, FormErrors.none(), model);
    }

    @PostMapping
    String create(PieceKindForm form, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        UUID id = form.id() == null ? Ids.next() : form.id();
        FormReader read = new FormReader();
        String name = read.field("name", () -> Typed.requiredLine(Picked.text(form.name()), 80));
        List<PieceKindLine> lines = read.field("like", () -> linesLike(form.like()));
        if (name != null && lines != null) {
            try {
                desk.save(new SavePieceKind(id, null, name, lines));
                Flash.done(redirect, "Saved. Now set the tasks it proposes.");
                return "redirect:/catalog/piece-kinds/" + id;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return form(form, null, read.errors(), model);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        PieceKindCard kind = pieceKinds.card(id);
        return form(new PieceKindForm(id, kind.version(), kind.name(), ""), kind, FormErrors.none(), model);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable UUID id,
            PieceKindForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        PieceKindCard kind = pieceKinds.card(id);
        FormReader read = new FormReader();
        String name = read.field("name", () -> Typed.requiredLine(Picked.text(form.name()), 80));
        if (name != null) {
            try {
                desk.rename(id, form.version(), name);
                Flash.done(redirect, "Saved.");
                return "redirect:/catalog/piece-kinds/" + id;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return form(form, kind, read.errors(), model);
    }

    @PostMapping("/{id}/retirement")
    String retire(@PathVariable UUID id, RedirectAttributes redirect) {
        desk.use(id, false);
        Flash.done(redirect, "Out of use. Pieces that have it keep it.");
        return "redirect:/catalog/piece-kinds/" + id;
    }

    @PostMapping("/{id}/return")
    String bringBack(@PathVariable UUID id, RedirectAttributes redirect) {
        desk.use(id, true);
        Flash.done(redirect, "Back in use.");
        return "redirect:/catalog/piece-kinds/" + id;
    }

    private List<PieceKindLine> linesLike(@Nullable String like) {
        return Picked.text(like).isBlank()
                ? List.of()
                : pieceKinds.find(Picked.id(like)).map(PieceKindCard::lines).orElse(List.of());
    }

    private String form(PieceKindForm form, @Nullable PieceKindCard kept, FormErrors errors, Model model) {
        Map<String, String> likes = new LinkedHashMap<>();
        pieceKinds.active().forEach(kind -> likes.put(kind.id().toString(), kind.name()));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        model.addAttribute("likes", likes);
        return "catalog/piece-kind-form";
    }

    /** A kind of piece as typed. */
    record PieceKindForm(
            @Nullable UUID id,
            @Nullable Integer version,
            @Nullable String name,
            @Nullable String like) {}
}
