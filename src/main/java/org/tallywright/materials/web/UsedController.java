package org.tallywright.materials.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.materials.Kind;
import org.tallywright.materials.MovementDraft;
import org.tallywright.materials.StoreRoom;
import org.tallywright.materials.UsedLine;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** What went into the work today, in one line, beside the hours of the day. It is seen in rows before it is saved. */
@Controller
@RequestMapping("/materials/used")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class UsedController {
    private static final String VIEW = "materials/used";
    private static final int LONGEST = 2000;

    private final Materials catalog;
    private final MovementReading reading;
    private final MovementForms forms;
    private final StoreRoom store;
    private final ShopClock clock;

    UsedController(Materials catalog, MovementReading reading, MovementForms forms, StoreRoom store, ShopClock clock) {
        this.catalog = catalog;
        this.reading = reading;
        this.forms = forms;
        this.store = store;
        this.clock = clock;
    }

    /** @param job those of the day's hours; with one of them it is chosen, with several the person chooses */
    @GetMapping
    String blank(
            @RequestParam(defaultValue = "") List<String> job,
            @RequestParam(defaultValue = "") String on,
            SignedIn me,
            Model model) {
        String day = on.matches("\\d{4}-\\d\\d-\\d\\d") ? on : clock.today().toString();
        String chosen = job.size() == 1 ? job.get(0) : "";
        return page(UsedForm.blank(chosen, day), List.of(), FormErrors.none(), me, model);
    }

    @PostMapping
    String create(
            @RequestParam MultiValueMap<String, String> sent,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UsedForm form = UsedForm.read(sent);
        if (!form.line().isBlank() || form.act().equals("read")) {
            return heard(form, me, model, response);
        }
        FormReader read = new FormReader();
        Map<UUID, MovementDraft> drafts = drafts(form, read);
        if (drafts.isEmpty() && !read.refused()) {
            read.refuse("line", "Write what was used, such as 2 sheets birch ply, 11 bf oak.");
        }
        if (!read.refused()) {
            try {
                store.saveAll(drafts, me);
                Flash.done(
                        redirect,
                        drafts.size() == 1 ? "The material is saved." : drafts.size() + " materials are saved.");
                return "redirect:" + day(form.on());
            } catch (Refused refused) {
                read.refuse(refused.field() == null ? refused.at("") : refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(form, asks(form, List.of()), read.errors(), me, model);
    }

    /** Puts the line into rows; whatever the button, nothing of it is saved before it was seen. */
    private String heard(UsedForm form, SignedIn me, Model model, HttpServletResponse response) {
        FormReader read = new FormReader();
        if (form.line().isBlank() || form.line().length() > LONGEST) {
            read.refuse(
                    "line",
                    form.line().isBlank()
                            ? "Write what was used, such as 2 sheets birch ply, 11 bf oak."
                            : "This line is too long.");
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(form, asks(form, List.of()), read.errors(), me, model);
        }
        List<UsedLine.Heard> heard = new UsedLine(catalog.active()).read(form.line());
        List<UsedForm.Row> rows = new ArrayList<>(form.rows());
        for (UsedLine.Heard part : heard) {
            rows.add(new UsedForm.Row(
                    Ids.next(),
                    part.material() == null ? "" : part.material().id().toString(),
                    part.quantity() == null ? "" : part.quantity().toString(),
                    part.typed()));
        }
        UsedForm inRows = form.with("", rows.size() > 60 ? rows.subList(0, 60) : rows);
        return page(inRows, asks(inRows, heard), read.errors(), me, model);
    }

    private Map<UUID, MovementDraft> drafts(UsedForm form, FormReader read) {
        Map<UUID, MovementDraft> drafts = new LinkedHashMap<>();
        for (int n = 0; n < form.rows().size(); n++) {
            UsedForm.Row row = form.rows().get(n);
            if (row.left()) {
                continue;
            }
            FormReader one = new FormReader();
            MovementDraft draft = reading.read(Kind.USES, form.use(row), one);
            if (draft != null) {
                drafts.put(row.id(), draft);
            }
            for (Map.Entry<String, String> error : one.errors().entrySet()) {
                boolean ofRow =
                        error.getKey().equals("material") || error.getKey().equals("quantity");
                String box = ofRow ? "row." + n + "." + error.getKey() : error.getKey();
                if (read.errors().get(box) == null) {
                    read.refuse(box, error.getValue());
                }
            }
        }
        return drafts;
    }

    private List<UsedPage.Row> asks(UsedForm form, List<UsedLine.Heard> heard) {
        List<MaterialCard> active = catalog.active();
        Map<String, String> units = active.stream()
                .collect(Collectors.toMap(card -> card.id().toString(), MaterialCard::unit, (a, b) -> a));
        UsedLine line = new UsedLine(active);
        int before = form.rows().size() - heard.size();
        List<UsedPage.Row> rows = new ArrayList<>();
        for (int n = 0; n < form.rows().size(); n++) {
            UsedForm.Row row = form.rows().get(n);
            UsedLine.@Nullable Heard part = n >= before && before >= 0
                    ? heard.get(n - before)
                    : line.read(row.typed()).stream().findFirst().orElse(null);
            rows.add(new UsedPage.Row(
                    "row." + n,
                    row.id(),
                    row.typed(),
                    row.material(),
                    row.quantity(),
                    units.getOrDefault(row.material(), ""),
                    part == null
                            ? List.of()
                            : part.perhaps().stream()
                                    .map(UsedController::choice)
                                    .toList(),
                    part == null || !row.material().isEmpty() ? null : part.ask()));
        }
        return rows;
    }

    private static UsedPage.Choice choice(MaterialCard card) {
        return new UsedPage.Choice(card.id().toString(), card.name() + " (" + card.unit() + ")");
    }

    private String page(UsedForm form, List<UsedPage.Row> rows, FormErrors errors, SignedIn me, Model model) {
        Map<String, String> sources = new LinkedHashMap<>();
        sources.put("job", "Bought for the job");
        sources.put("stock", "From stock");
        model.addAttribute(
                "page",
                new UsedPage(form, rows, forms.jobChoices(form.job(), me.is(Role.HELPER)), sources, day(form.on())));
        model.addAttribute(
                "materials",
                catalog.active().stream().map(UsedController::choice).toList());
        model.addAttribute("errors", errors);
        return VIEW;
    }

    private String day(String on) {
        boolean known = on.matches("\\d{4}-\\d\\d-\\d\\d");
        return known && !on.equals(clock.today().toString()) && on.compareTo("2000-01-01") >= 0 ? "/days/" + on : "/";
    }
}
