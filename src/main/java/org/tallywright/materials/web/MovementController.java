package org.tallywright.materials.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.materials.Kind;
import org.tallywright.materials.MovementDraft;
import org.tallywright.materials.StoreRoom;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** One purchase, use, return or offcut: entered, corrected, removed. A helper enters what he takes and sees no price. */
@Controller
@RequestMapping("/materials/{kind:purchases|uses|returns|offcuts}")
@Access({Role.OWNER, Role.LEAD})
class MovementController {
    private final StoreRoom store;
    private final MovementReading reading;
    private final MovementForms forms;
    private final Materials catalog;
    private final ShopClock clock;

    MovementController(
            StoreRoom store, MovementReading reading, MovementForms forms, Materials catalog, ShopClock clock) {
        this.store = store;
        this.reading = reading;
        this.forms = forms;
        this.catalog = catalog;
        this.clock = clock;
    }

    @GetMapping("/new")
    @Access({Role.OWNER, Role.LEAD, Role.HELPER})
    String blank(@PathVariable String kind, @RequestParam(defaultValue = "") String job, SignedIn me, Model model) {
        guard(kindOf(kind), me);
        MovementForm form = MovementForm.blank(Ids.next(), job, clock.today().toString());
        return page(kindOf(kind), form, FormErrors.none(), me, model);
    }

    @PostMapping
    @Access({Role.OWNER, Role.LEAD, Role.HELPER})
    String create(
            @PathVariable String kind,
            MovementForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        guard(kindOf(kind), me);
        UUID id = form.id() == null ? Ids.next() : form.id();
        return save(kindOf(kind), id, form, me, model, response, redirect);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String kind, @PathVariable UUID id, SignedIn me, Model model) {
        MovementForm form = forms.of(id, store.find(kindOf(kind), id));
        return page(kindOf(kind), form, FormErrors.none(), me, model);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable String kind,
            @PathVariable UUID id,
            MovementForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        var unused = store.find(kindOf(kind), id);
        return save(kindOf(kind), id, form, me, model, response, redirect);
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String kind, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        MovementForm form = forms.of(id, store.find(kindOf(kind), id));
        store.remove(kindOf(kind), id, me);
        Flash.done(redirect, "The " + kindOf(kind).word() + " is removed; the trail keeps it.");
        return back(kindOf(kind), form.job());
    }

    /** An offcut is used up, also when its job is long closed. */
    @PostMapping("/{id}/usage")
    String use(@PathVariable String kind, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        if (kindOf(kind) != Kind.OFFCUTS) {
            throw new NotHere("page");
        }
        store.offcutGone(id, clock.today(), me);
        Flash.done(redirect, "The offcut is marked as used up.");
        return "redirect:/materials/offcuts";
    }

    private String save(
            Kind kind,
            UUID id,
            MovementForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        MovementDraft draft = reading.read(kind, form, read);
        if (draft != null) {
            try {
                store.save(id, form.version(), draft, me);
                Flash.done(redirect, "The " + kind.word() + " is saved.");
                return back(kind, form.job());
            } catch (Refused refused) {
                read.refuse(refused.field() == null ? refused.at("") : refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(kind, form, read.errors(), me, model);
    }

    private static String back(Kind kind, @Nullable String job) {
        String number = job == null ? "" : job.strip();
        return number.matches("\\d{2}-\\d{3,4}")
                ? "redirect:/jobs/" + number + "/materials"
                : "redirect:/materials/" + path(kind);
    }

    private String page(Kind kind, MovementForm form, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("kind", path(kind));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("materials", materials());
        model.addAttribute("jobs", forms.jobChoices(form.job(), me.is(Role.HELPER)));
        model.addAttribute("sources", sources());
        model.addAttribute("prices", me.is(Role.OWNER, Role.LEAD));
        return "materials/movement";
    }

    private Map<String, String> materials() {
        Map<String, String> choices = new LinkedHashMap<>();
        for (MaterialCard card : catalog.active()) {
            choices.put(card.id().toString(), card.name() + " (" + card.unit() + ")");
        }
        return choices;
    }

    private static Map<String, String> sources() {
        Map<String, String> sources = new LinkedHashMap<>();
        sources.put("job", "Bought for the job");
        sources.put("stock", "From stock");
        return sources;
    }

    private static void guard(Kind kind, SignedIn me) {
        if (!StoreRoom.mayEnter(kind, me)) {
            throw new AccessDeniedException("not for this role");
        }
    }

    static Kind kindOf(String path) {
        try {
            return Kind.valueOf(path.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException unknown) {
            throw new NotHere("page");
        }
    }

    static String path(Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
