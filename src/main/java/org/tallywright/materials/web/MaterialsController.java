package org.tallywright.materials.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobHeads;
import org.tallywright.materials.HeldOffcuts;
import org.tallywright.materials.JobMaterials;
import org.tallywright.materials.Kind;
import org.tallywright.materials.MaterialLedger;
import org.tallywright.materials.PaidPrices;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Yield;
import org.tallywright.web.Access;
import org.tallywright.web.NavItem;
import org.tallywright.web.Role;
import org.tallywright.web.Search;
import org.tallywright.web.SignedIn;

/** The shop's material: lists of what came and went, stock, yields, and one job's part of it. */
@Controller
@Access({Role.OWNER, Role.LEAD})
class MaterialsController {
    private static final int ROWS = 50;

    private final MaterialLedger ledger;
    private final JobMaterials ofJob;
    private final JobHeads heads;
    private final PaidPrices prices;
    private final Materials catalog;
    private final HeldOffcuts held;

    MaterialsController(
            MaterialLedger ledger,
            JobMaterials ofJob,
            JobHeads heads,
            PaidPrices prices,
            Materials catalog,
            HeldOffcuts held) {
        this.ledger = ledger;
        this.ofJob = ofJob;
        this.heads = heads;
        this.prices = prices;
        this.catalog = catalog;
        this.held = held;
    }

    @GetMapping("/materials")
    String home() {
        return "redirect:/materials/purchases";
    }

    @GetMapping("/materials/{kind:purchases|uses|returns|offcuts}")
    String index(
            @PathVariable String kind,
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "1") int page,
            Model model,
            HttpServletResponse response) {
        Search search = Search.of(q, response);
        Kind what = MovementController.kindOf(kind);
        int pages = Math.max(1, (ledger.count(what, search.words()) + ROWS - 1) / ROWS);
        int shown = Math.min(Math.max(1, page), pages);
        model.addAttribute("kind", kind);
        model.addAttribute("q", search.typed());
        model.addAttribute("search", search);
        model.addAttribute("rows", ledger.page(what, search.words(), (shown - 1) * ROWS, ROWS));
        model.addAttribute("page", shown);
        model.addAttribute("pages", pages);
        model.addAttribute("held", what == Kind.OFFCUTS ? held.all() : Map.of());
        model.addAttribute("tabs", tabs(kind));
        return "materials/index";
    }

    @GetMapping("/materials/stock")
    String stock(Model model) {
        model.addAttribute("rows", ledger.stock());
        model.addAttribute("tabs", tabs("stock"));
        return "materials/stock";
    }

    @GetMapping("/materials/yields")
    String yields(Model model) {
        YieldBook book = YieldBook.learn(ledger.finished());
        List<MaterialLedger.YieldRow> rows = ledger.yields();
        Map<UUID, YieldBook.Expected> expected = new HashMap<>();
        rows.forEach(row -> expected.put(row.id(), book.of(row.id(), Yield.of(row.startingYield()))));
        model.addAttribute("rows", rows);
        model.addAttribute("expected", expected);
        model.addAttribute("tabs", tabs("yields"));
        return "materials/yields";
    }

    @GetMapping("/materials/prices/{id}")
    String prices(@PathVariable UUID id, Model model) {
        List<PaidPrices.Row> rows = prices.of(id);
        model.addAttribute("material", catalog.find(id).orElseThrow(() -> new NotHere("material")));
        model.addAttribute("rows", rows);
        if (!rows.isEmpty()) {
            model.addAttribute("range", PaidPrices.Range.of(rows));
        }
        return "materials/prices";
    }

    /** A helper sees quantities and no price. */
    @GetMapping("/jobs/{number}/materials")
    @Access({Role.OWNER, Role.LEAD, Role.HELPER})
    String job(@PathVariable String number, SignedIn me, Model model) {
        var head = heads.find(number, me, "materials");
        model.addAttribute("head", head);
        model.addAttribute("number", number);
        model.addAttribute("rows", ofJob.of(head.job().id()));
        model.addAttribute("purchases", me.is(Role.HELPER) ? List.of() : ledger.ofJob(Kind.PURCHASES, number));
        model.addAttribute("uses", ledger.ofJob(Kind.USES, number));
        model.addAttribute("returns", me.is(Role.HELPER) ? List.of() : ledger.ofJob(Kind.RETURNS, number));
        model.addAttribute("offcuts", ledger.ofJob(Kind.OFFCUTS, number));
        model.addAttribute("prices", me.is(Role.OWNER, Role.LEAD));
        model.addAttribute("open", !head.job().isClosed());
        return "materials/job";
    }

    private static List<NavItem> tabs(String current) {
        return List.of(
                tab("purchases", current),
                tab("uses", current),
                tab("returns", current),
                tab("offcuts", current),
                tab("stock", current),
                tab("yields", current),
                new NavItem("catalogue", "materials.tab.catalogue", "/catalog/materials"));
    }

    private static NavItem tab(String key, String current) {
        return new NavItem(key, "materials.tab." + key, "/materials/" + key, key.equals(current));
    }
}
