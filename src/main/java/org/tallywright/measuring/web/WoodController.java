package org.tallywright.measuring.web;

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
import org.tallywright.catalog.Materials;
import org.tallywright.measuring.Species;
import org.tallywright.measuring.WoodDesk;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** What wood a material of the catalogue is, so that solid parts of it can be told how far they move. */
@Controller
@RequestMapping("/catalog/materials/{id}/wood")
@Access(Role.OWNER)
class WoodController {
    private final Materials materials;
    private final WoodDesk desk;

    WoodController(Materials materials, WoodDesk desk) {
        this.materials = materials;
        this.desk = desk;
    }

    /** What was chosen; {@code none} for no wood whose movement is known. */
    private record Said(@Nullable Species species) {}

    @GetMapping
    String edit(@PathVariable UUID id, Model model) {
        WoodDesk.Kept kept = desk.of(id);
        return page(id, code(kept.species()), kept.version(), FormErrors.none(), model);
    }

    private String page(UUID id, String chosen, @Nullable Integer version, FormErrors errors, Model model) {
        Map<String, String> woods = new LinkedHashMap<>();
        woods.put("none", "None of these");
        woods.putAll(PartForm.WOODS);
        model.addAttribute("material", materials.card(id));
        model.addAttribute("species", chosen);
        model.addAttribute("version", version);
        model.addAttribute("woods", woods);
        model.addAttribute("errors", errors);
        return "measuring/wood";
    }

    private static String code(@Nullable Species species) {
        return species == null ? "none" : species.code();
    }

    @PostMapping
    String update(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String species,
            @RequestParam(required = false) @Nullable Integer version,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return new FormSave<Said>(read -> read.field("species", () -> chosen(species)))
                .keeping(said -> {
                    desk.say(id, version, said.species(), me.personId());
                    Flash.done(redirect, "The wood is kept; solid parts offer it.");
                    return "redirect:/catalog/materials/" + id;
                })
                .beside(() ->
                        List.of(new Stale.Row("Wood", name(code(desk.of(id).species())), name(species))))
                .or(response, errors -> page(id, species, version, errors, model));
    }

    private static String name(String code) {
        return PartForm.WOODS.getOrDefault(code, "None of these");
    }

    private static Said chosen(String code) {
        if (code.equals("none")) {
            return new Said(null);
        }
        return new Said(java.util.Arrays.stream(Species.values())
                .filter(species -> species.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new NotUnderstood("Choose a wood from the list.")));
    }
}
