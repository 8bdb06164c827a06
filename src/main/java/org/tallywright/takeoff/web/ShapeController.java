package org.tallywright.takeoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.shared.ShopConventions;
import org.tallywright.takeoff.MaterialShape;
import org.tallywright.takeoff.MaterialShapes;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** How a material comes: as sheets, bars or boards, of which sizes, with which losses. */
@Controller
@RequestMapping("/catalog/materials/{id}/form")
@Access(Role.OWNER)
class ShapeController {
    private final Materials materials;
    private final MaterialShapes shapes;
    private final ShopConventions shop;

    ShapeController(Materials materials, MaterialShapes shapes, ShopConventions shop) {
        this.materials = materials;
        this.shapes = shapes;
        this.shop = shop;
    }

    @GetMapping
    String edit(@PathVariable UUID id, Model model) {
        MaterialCard card = materials.card(id);
        return page(card, kept(card), FormErrors.none(), model);
    }

    private ShapeForm kept(MaterialCard card) {
        MaterialShapes.Kept kept = shapes.of(List.of(card)).get(card.id());
        return kept == null ? ShapeForm.blank(shop.units()) : ShapeForm.of(kept.shape(), kept.version(), shop.units());
    }

    private String page(MaterialCard card, ShapeForm form, FormErrors errors, Model model) {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put("sheet", "Sheets of one size");
        forms.put("bar", "Bars or trim, by length");
        forms.put("board", "Boards of random width and length");
        model.addAttribute("material", card);
        model.addAttribute("form", form);
        model.addAttribute("forms", forms);
        model.addAttribute("errors", errors);
        model.addAttribute("lengthUnit", Written.suffix(shop.units()));
        return "takeoff/material-form";
    }

    /** What a named size leaves when planed: a table's figure, so it says to measure. */
    private String planed(ShapeForm form, MaterialShape shape) {
        return shape.form() != MaterialShape.Form.BOARD
                ? ""
                : form.named()
                        .map(size -> " " + size.name() + " planed on both faces is "
                                + size.dressedThickness().format(shop.units())
                                + " thick in the tables; measure what was delivered.")
                        .orElse("");
    }

    @PostMapping
    String update(
            @PathVariable UUID id,
            ShapeForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        MaterialCard card = materials.card(id);
        return new FormSave<MaterialShape>(read -> form.read(read, shop.units()))
                .keeping(shape -> {
                    shapes.write(id, form.version(), shape, me.personId());
                    Flash.done(redirect, "How it comes is kept." + planed(form, shape));
                    return "redirect:/catalog/materials/" + id;
                })
                .beside(() -> form.beside(kept(card)))
                .or(response, errors -> page(card, form, errors, model));
    }
}
