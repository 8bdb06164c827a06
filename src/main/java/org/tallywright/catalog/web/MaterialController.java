package org.tallywright.catalog.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.MaterialDesk;
import org.tallywright.catalog.MaterialPrice;
import org.tallywright.catalog.Materials;
import org.tallywright.catalog.SaveMaterial;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.UnitPrice;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.Search;
import org.tallywright.web.SignedIn;

/** The materials by group, one of them with its price history, and its form. */
@Controller
@RequestMapping("/catalog/materials")
@Access(Role.OWNER)
class MaterialController {
    private final Materials materials;
    private final MaterialDesk desk;
    private final ShopClock clock;

    MaterialController(Materials materials, MaterialDesk desk, ShopClock clock) {
        this.materials = materials;
        this.desk = desk;
        this.clock = clock;
    }

    @GetMapping
    @Access({Role.OWNER, Role.LEAD})
    String index(@RequestParam(defaultValue = "") String q, Model model, SignedIn me, HttpServletResponse response) {
        Search search = Search.of(q, response);
        List<MaterialCard> all = materials.all();
        List<MaterialCard> found = all.stream()
                .filter(m -> search.finds(m.name() + " " + m.group() + " " + m.supplier()))
                .toList();
        model.addAttribute("tabs", CatalogTabs.at(CatalogTabs.MATERIALS));
        model.addAttribute(
                "groups",
                found.stream()
                        .filter(MaterialCard::active)
                        .collect(Collectors.groupingBy(MaterialCard::group, LinkedHashMap::new, Collectors.toList())));
        model.addAttribute("retired", found.stream().filter(m -> !m.active()).toList());
        model.addAttribute("prices", materials.pricesOn(clock.today()));
        model.addAttribute("q", search.typed());
        model.addAttribute("search", search);
        model.addAttribute("isEmpty", all.isEmpty());
        model.addAttribute("found", found.size());
        model.addAttribute("edits", me.is(Role.OWNER));
        return "catalog/materials";
    }

    @GetMapping("/{id}")
    @Access({Role.OWNER, Role.LEAD})
    String show(@PathVariable UUID id, Model model, SignedIn me) {
        return page(
                materials.card(id), new PriceForm(clock.today().toString(), "", "", ""), FormErrors.none(), model, me);
    }

    @GetMapping("/new")
    String blank(Model model) {
        return form(MaterialForm.blank(Ids.next()), null, FormErrors.none(), model);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        MaterialCard material = materials.card(id);
        return form(MaterialForm.of(material), material, FormErrors.none(), model);
    }

    @PostMapping
    String create(
            MaterialForm form, SignedIn me, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        UUID id = form.id() == null ? Ids.next() : form.id();
        FormReader read = new FormReader();
        SaveMaterial save = form.read(id, read);
        UnitPrice price = read.optional("price", form.price(), () -> UnitPrice.of(Picked.text(form.price())));
        if (save != null && !read.refused()) {
            try {
                desk.save(save, price, clock.today(), me.personId());
                Flash.done(redirect, "Saved.");
                return "redirect:/catalog/materials/" + id;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return form(form, null, read.errors(), model);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable UUID id,
            MaterialForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        MaterialCard material = materials.card(id);
        FormReader read = new FormReader();
        SaveMaterial save = form.read(id, read);
        if (save != null) {
            try {
                desk.save(save, me.personId());
                Flash.done(redirect, "Saved.");
                return "redirect:/catalog/materials/" + id;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return form(form, material, read.errors(), model);
    }

    @PostMapping("/{id}/prices")
    String createPrice(
            @PathVariable UUID id,
            PriceForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect,
            SignedIn me) {
        MaterialCard material = materials.card(id);
        FormReader read = new FormReader();
        LocalDate from = read.field("from", form::day);
        UnitPrice price = read.field("price", form::unitPrice);
        String basis = read.field("basis", form::source);
        if (from != null && price != null && basis != null) {
            try {
                desk.price(id, from, price, basis, form.corrects(), me.personId());
                Flash.done(redirect, "Price saved.");
                return "redirect:/catalog/materials/" + id;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(422);
        return page(material, form.correcting(from == null ? null : kept(id, from)), read.errors(), model, me);
    }

    private @Nullable String kept(UUID id, LocalDate from) {
        return materials.history(id).stream()
                .filter(price -> price.from().equals(from))
                .map(MaterialPrice::words)
                .findFirst()
                .orElse(null);
    }

    @PostMapping("/{id}/retirement")
    String retire(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.use(id, false, me.personId());
        Flash.done(redirect, "Out of use. What was bought stays.");
        return "redirect:/catalog/materials/" + id;
    }

    @PostMapping("/{id}/return")
    String bringBack(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.use(id, true, me.personId());
        Flash.done(redirect, "Back in use.");
        return "redirect:/catalog/materials/" + id;
    }

    private String page(MaterialCard material, PriceForm price, FormErrors errors, Model model, SignedIn me) {
        model.addAttribute("material", material);
        List<MaterialPrice> history = materials.history(material.id());
        model.addAttribute("history", history);
        model.addAttribute(
                "current",
                history.stream()
                        .map(MaterialPrice::from)
                        .filter(from -> !from.isAfter(clock.today()))
                        .findFirst()
                        .orElse(null));
        model.addAttribute("today", clock.today());
        model.addAttribute("price", price);
        model.addAttribute("errors", errors);
        model.addAttribute("edits", me.is(Role.OWNER));
        return "catalog/material";
    }

    private String form(MaterialForm form, @Nullable MaterialCard kept, FormErrors errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        model.addAttribute(
                "groups",
                materials.active().stream().map(MaterialCard::group).collect(Collectors.toCollection(TreeSet::new)));
        return "catalog/material-form";
    }
}
