package org.tallywright.takeoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
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
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.shared.Length;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Typed;
import org.tallywright.takeoff.Recipe;
import org.tallywright.takeoff.RecipeBook;
import org.tallywright.takeoff.RecipeError;
import org.tallywright.takeoff.RecipeReader;
import org.tallywright.takeoff.Worked;
import org.tallywright.takeoff.Workings;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The formulas of a kind of piece: read with trial sizes, and changed by the shop. */
@Controller
@RequestMapping("/catalog/piece-kinds/{id}/parts")
@Access(Role.OWNER)
class RecipeController {
    private final PieceKinds kinds;
    private final RecipeBook recipes;
    private final ShopConventions shop;

    RecipeController(PieceKinds kinds, RecipeBook recipes, ShopConventions shop) {
        this.kinds = kinds;
        this.recipes = recipes;
        this.shop = shop;
    }

    /** @param value what it comes to for the trial sizes, empty where it cannot be said */
    record SettingRow(String name, String label, String formula, String value) {}

    record PartRow(String name, String quantity, String length, String width, String material, String more) {}

    record TriedRow(String name, int quantity, String size) {}

    @GetMapping
    @Access({Role.OWNER, Role.LEAD})
    String show(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String width,
            @RequestParam(defaultValue = "") String height,
            @RequestParam(defaultValue = "") String depth,
            SignedIn me,
            Model model,
            HttpServletResponse response) {
        PieceKindCard kind = kinds.card(id);
        RecipeBook.Page page = recipes.of(id);
        Recipe recipe = page.recipe();
        FormReader read = new FormReader();
        Length wide = size(read, "width", width);
        Length high = size(read, "height", height);
        Length deep = size(read, "depth", depth);
        if (read.refused()) {
            response.setStatus(422);
        }
        Worked worked = Workings.of(recipe, Workings.sizes(wide, high, deep), Map.of(), Map.of(), shop.units());
        boolean tried = wide != null || high != null || deep != null;
        model.addAttribute("kind", kind);
        model.addAttribute("shipped", page.isShipped());
        model.addAttribute("edits", me.is(Role.OWNER));
        model.addAttribute("sizes", Map.of("width", width, "height", height, "depth", depth));
        model.addAttribute("errors", read.errors());
        model.addAttribute("lengthUnit", Written.suffix(shop.units()));
        model.addAttribute("settings", settings(recipe, worked));
        model.addAttribute("slots", recipe.slots());
        model.addAttribute("parts", parts(recipe));
        model.addAttribute("tasks", recipe.tasks());
        model.addAttribute("supplies", recipe.supplies());
        model.addAttribute("tried", tried ? tried(worked) : null);
        model.addAttribute("problems", tried ? worked.problems() : List.of());
        return "takeoff/recipe";
    }

    private @Nullable Length size(FormReader read, String field, String typed) {
        return read.optional(field, typed, () -> Length.parseSize(typed, shop.units()));
    }

    private List<SettingRow> settings(Recipe recipe, Worked worked) {
        return recipe.settings().stream()
                .map(s -> new SettingRow(
                        s.name(),
                        s.label(),
                        s.formula().toString(),
                        Written.amount(worked.settings().get(s.name()), shop.units())))
                .toList();
    }

    private static List<PartRow> parts(Recipe recipe) {
        List<PartRow> rows = new ArrayList<>();
        for (Recipe.PartRule rule : recipe.parts()) {
            rows.add(new PartRow(
                    rule.name(),
                    rule.quantity().toString(),
                    rule.length().toString(),
                    rule.width().toString(),
                    rule.slot(),
                    Written.more(rule)));
        }
        return rows;
    }

    private List<TriedRow> tried(Worked worked) {
        return worked.parts().stream()
                .map(part -> new TriedRow(
                        part.name(),
                        part.quantity(),
                        Written.size(part.length(), shop.units()) + " x " + Written.size(part.width(), shop.units())))
                .toList();
    }

    @GetMapping("/edit")
    String edit(@PathVariable UUID id, Model model) {
        RecipeBook.Page page = recipes.of(id);
        return form(id, page.text(), page.version(), FormErrors.none(), List.of(), Sizes.NONE, model);
    }

    /** Sizes to try formulas with, as typed. */
    record Sizes(String width, String height, String depth) {
        static final Sizes NONE = new Sizes("", "", "");

        Sizes {
            width = width == null ? "" : width;
            height = height == null ? "" : height;
            depth = depth == null ? "" : depth;
        }
    }

    /** A line that cannot be used, with the line itself. */
    record Wrong(String words, String line) {}

    /** What formulas come to before they are kept: the parts for these sizes, or the lines that cannot be used. */
    @PostMapping("/trial")
    String tryOut(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String text,
            @RequestParam(required = false) @Nullable Integer version,
            Sizes sizes,
            Model model,
            HttpServletResponse response) {
        FormReader read = new FormReader();
        String clean = read.field("text", () -> Typed.block(text, RecipeReader.MOST_CHARACTERS));
        Length wide = size(read, "width", sizes.width());
        Length high = size(read, "height", sizes.height());
        Length deep = size(read, "depth", sizes.depth());
        List<RecipeError> lines = clean == null ? List.of() : recipes.errors(clean);
        if (!lines.isEmpty()) {
            read.refuse("text", "Some lines cannot be used; they are named above.");
        }
        if (clean != null && !read.refused()) {
            Worked worked = Workings.of(
                    RecipeReader.read(clean).recipe(),
                    Workings.sizes(wide, high, deep),
                    Map.of(),
                    Map.of(),
                    shop.units());
            model.addAttribute("tried", tried(worked));
            model.addAttribute("problems", worked.problems());
        } else {
            response.setStatus(422);
        }
        return form(id, text, version, read.errors(), lines, sizes, model);
    }

    private String form(
            UUID id,
            String text,
            @Nullable Integer version,
            FormErrors errors,
            List<RecipeError> lines,
            Sizes sizes,
            Model model) {
        model.addAttribute("kind", kinds.card(id));
        model.addAttribute("text", text);
        model.addAttribute("version", version);
        model.addAttribute("errors", errors);
        String[] written = text.split("\n", -1);
        model.addAttribute(
                "lines",
                lines.stream()
                        .map(e -> new Wrong(
                                e.words(),
                                e.line() < 1 || e.line() > written.length ? "" : written[e.line() - 1].strip()))
                        .toList());
        model.addAttribute("sizes", sizes);
        model.addAttribute("lengthUnit", Written.suffix(shop.units()));
        return "takeoff/recipe-form";
    }

    @PostMapping
    String update(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String text,
            @RequestParam(required = false) @Nullable Integer version,
            Sizes sizes,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        String clean = read.field("text", () -> Typed.block(text, RecipeReader.MOST_CHARACTERS));
        if (clean != null) {
            try {
                recipes.write(id, version, clean, me.personId());
                Flash.done(redirect, "The formulas are kept.");
                return "redirect:/catalog/piece-kinds/" + id + "/parts";
            } catch (Refused refused) {
                read.refuse("text", "Some lines cannot be used; they are named above.");
            }
        }
        response.setStatus(422);
        List<RecipeError> lines = clean == null ? List.of() : recipes.errors(clean);
        return form(id, text, version, read.errors(), lines, sizes, model);
    }

    @PostMapping("/shipped")
    String drop(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        recipes.drop(id, me.personId());
        Flash.done(redirect, "The shipped formulas are back.");
        return "redirect:/catalog/piece-kinds/" + id + "/parts";
    }
}
