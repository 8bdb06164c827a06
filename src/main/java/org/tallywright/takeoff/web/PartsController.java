package org.tallywright.takeoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.takeoff.PartRows;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.takeoff.Recipe;
import org.tallywright.takeoff.RecipeBook;
import org.tallywright.takeoff.TakeoffDesk;
import org.tallywright.takeoff.Worked;
import org.tallywright.takeoff.formula.Formula;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The parts of a piece, and taking them off by the formulas of its kind. */
@Controller
@RequestMapping("/jobs/{number}/pieces/{id}")
@Access({Role.OWNER, Role.LEAD})
class PartsController {
    private final JobDesk jobs;
    private final JobHeads heads;
    private final PieceFacts pieces;
    private final PartRows rows;
    private final RecipeBook recipes;
    private final TakeoffDesk desk;
    private final MaterialNames materials;
    private final ShopConventions shop;

    PartsController(
            JobDesk jobs,
            JobHeads heads,
            PieceFacts pieces,
            PartRows rows,
            RecipeBook recipes,
            TakeoffDesk desk,
            MaterialNames materials,
            ShopConventions shop) {
        this.jobs = jobs;
        this.heads = heads;
        this.pieces = pieces;
        this.rows = rows;
        this.recipes = recipes;
        this.desk = desk;
        this.materials = materials;
        this.shop = shop;
    }

    /**
     * @param typed this piece's own formula
     * @param value what it comes to now
     */
    record SettingBox(String field, String label, String typed, String formula, String value) {}

    record SlotBox(String field, String label, String value) {}

    /** @param changed by hand, where the formulas made it first */
    record Row(
            UUID id,
            int number,
            String name,
            int quantity,
            String size,
            String material,
            String more,
            boolean byHand,
            boolean changed) {}

    @GetMapping("/parts")
    String show(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = jobs.find(number);
        TakeoffDesk.Answered answered = desk.answered(id);
        return page(job, id, answered.answers(), answered.version(), FormErrors.none(), me, model);
    }

    private String page(
            JobRef job,
            UUID pieceId,
            Map<String, String> answers,
            @Nullable Integer version,
            FormErrors errors,
            SignedIn me,
            Model model) {
        PieceFacts.Fact piece = pieces.of(job.id(), pieceId);
        RecipeBook.Page book = recipes.of(piece.kindId());
        Recipe recipe = book.recipe();
        Worked worked = desk.worked(piece, recipe, answers);
        Map<String, UUID> chosen = desk.chosen(recipe, answers);
        Map<String, String> names = materials.byId();
        List<PartRows.Row> parts = rows.ofPiece(job.id(), pieceId);
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("piece", piece);
        model.addAttribute("open", !job.isClosed());
        model.addAttribute("version", version);
        model.addAttribute("errors", errors);
        model.addAttribute("shipped", book.isShipped());
        model.addAttribute("formulas", !recipe.parts().isEmpty());
        model.addAttribute("settings", settings(recipe, worked, answers));
        model.addAttribute("slots", slots(recipe, chosen));
        model.addAttribute("materials", names);
        model.addAttribute("problems", worked.problems());
        model.addAttribute("parts", parts.stream().map(row -> row(row, names)).toList());
        Set<String> leftOut = desk.leftOut(pieceId);
        model.addAttribute("leftOut", leftOut);
        model.addAttribute("stale", !recipe.parts().isEmpty() && TakeoffDesk.isStale(parts, worked, leftOut));
        return "takeoff/parts";
    }

    @PostMapping("/left-out/removal")
    String bringBack(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String rule,
            SignedIn me,
            RedirectAttributes redirect) {
        boolean made = desk.bringBack(jobs.find(number).id(), id, rule, me.personId());
        Flash.done(
                redirect,
                made
                        ? "The part is back, as the formulas make it."
                        : "It is no longer left out, but the formulas do not make it for these sizes.");
        return "redirect:/jobs/" + number + "/pieces/" + id + "/parts";
    }

    private List<SettingBox> settings(Recipe recipe, Worked worked, Map<String, String> answers) {
        return recipe.settings().stream()
                .map(s -> new SettingBox(
                        "set-" + s.name(),
                        s.label(),
                        answers.getOrDefault(s.name(), ""),
                        s.formula().toString(),
                        Written.amount(worked.settings().get(s.name()), shop.units())))
                .toList();
    }

    private static List<SlotBox> slots(Recipe recipe, Map<String, UUID> chosen) {
        return recipe.slots().stream()
                .map(slot -> new SlotBox(
                        "mat-" + slot.name(),
                        slot.label(),
                        chosen.containsKey(slot.name()) ? String.valueOf(chosen.get(slot.name())) : ""))
                .toList();
    }

    private Row row(PartRows.Row row, Map<String, String> names) {
        UUID material = row.details().materialId();
        return new Row(
                row.id(),
                row.number(),
                row.details().name(),
                row.details().quantity(),
                Written.size(row.details().length(), shop.units()) + " x "
                        + Written.size(row.details().width(), shop.units()),
                material == null ? "" : names.getOrDefault(material.toString(), ""),
                Written.more(row.details()),
                row.byHand(),
                row.byHand() && !row.rule().isEmpty());
    }

    @PostMapping("/takeoff")
    String takeOff(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable Integer version,
            @RequestParam MultiValueMap<String, String> sent,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        PieceFacts.Fact piece = pieces.of(job.id(), id);
        Recipe recipe = recipes.of(piece.kindId()).recipe();
        FormReader read = new FormReader();
        Map<String, String> answers = answers(recipe, sent, read);
        if (!read.refused()) {
            try {
                Flash.done(redirect, said(desk.takeOff(job.id(), id, version, answers, me.personId())));
                return "redirect:/jobs/" + number + "/pieces/" + id + "/parts";
            } catch (Refused refused) {
                String field = refused.field();
                read.refuse(field == null || field.isEmpty() ? "" : "set-" + field, refused.sentence());
            }
        }
        response.setStatus(422);
        return page(job, id, answers, version, read.errors(), me, model);
    }

    private static String said(TakeoffDesk.Taken taken) {
        String lines = taken.lines() == 1
                ? "One line of parts is taken off."
                : taken.lines() + " lines of parts are taken off.";
        int kept = taken.changed() + taken.leftOut();
        return kept == 0
                ? lines
                : lines + " As they were: " + taken.changed() + " changed and " + taken.leftOut()
                        + " left out by hand.";
    }

    /** The piece's own: a box left empty takes the kind's formula. */
    private Map<String, String> answers(Recipe recipe, MultiValueMap<String, String> sent, FormReader read) {
        Map<String, String> answers = new LinkedHashMap<>();
        for (Recipe.Setting setting : recipe.settings()) {
            String typed =
                    first(sent, "set-" + setting.name()).replaceAll("\\s+", " ").strip();
            if (typed.length() > Formula.MOST_CHARACTERS) {
                read.refuse(
                        "set-" + setting.name(), "A formula has at most " + Formula.MOST_CHARACTERS + " characters.");
            } else if (!typed.isEmpty()) {
                answers.put(setting.name(), typed);
            }
        }
        Map<String, String> names = materials.byId();
        for (Recipe.Slot slot : recipe.slots()) {
            String typed = first(sent, "mat-" + slot.name());
            if (!typed.isEmpty()) {
                if (!names.containsKey(typed)) {
                    read.refuse("mat-" + slot.name(), "Pick a material of the catalogue.");
                } else {
                    answers.put(TakeoffDesk.MATERIAL + slot.name(), typed);
                }
            }
        }
        return answers;
    }

    private static String first(MultiValueMap<String, String> sent, String name) {
        String value = sent.getFirst(name);
        return value == null ? "" : value;
    }
}
