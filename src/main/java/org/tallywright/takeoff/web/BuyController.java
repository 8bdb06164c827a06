package org.tallywright.takeoff.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.ShopConventions;
import org.tallywright.takeoff.BuyLinesToEstimate;
import org.tallywright.takeoff.PartRows;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A job's cut list, for everybody who works, and its buy list with the layouts. Neither names a price. */
@Controller
@RequestMapping("/jobs/{number}")
@Access({Role.OWNER, Role.LEAD})
class BuyController {
    private final JobDesk jobs;
    private final JobHeads heads;
    private final PartRows rows;
    private final BuyPages pages;
    private final BuyLinesToEstimate estimate;
    private final Materials materials;
    private final ShopConventions shop;

    BuyController(
            JobDesk jobs,
            JobHeads heads,
            PartRows rows,
            BuyPages pages,
            BuyLinesToEstimate estimate,
            Materials materials,
            ShopConventions shop) {
        this.jobs = jobs;
        this.heads = heads;
        this.rows = rows;
        this.pages = pages;
        this.estimate = estimate;
        this.materials = materials;
        this.shop = shop;
    }

    record CutRow(int number, String name, int quantity, String length, String width, String material, String more) {}

    @GetMapping("/cut-list")
    @Access({Role.OWNER, Role.LEAD, Role.HELPER})
    String cutList(@PathVariable String number, SignedIn me, Model model) {
        JobHead head = heads.find(number, me, "job");
        Map<UUID, String> names =
                materials.all().stream().collect(Collectors.toMap(MaterialCard::id, MaterialCard::name));
        Map<String, List<CutRow>> byPiece = new LinkedHashMap<>();
        for (PartRows.Row row : rows.ofJob(head.job().id())) {
            String piece = row.pieces() > 1 ? row.pieceName() + " (" + row.pieces() + " alike)" : row.pieceName();
            byPiece.computeIfAbsent(piece, p -> new java.util.ArrayList<>()).add(cut(row, names));
        }
        model.addAttribute("head", head);
        model.addAttribute("pieces", byPiece);
        model.addAttribute("plans", me.is(Role.OWNER, Role.LEAD));
        return "takeoff/cut-list";
    }

    private CutRow cut(PartRows.Row row, Map<UUID, String> names) {
        UUID material = row.details().materialId();
        return new CutRow(
                row.number(),
                row.details().name(),
                row.all(),
                Written.size(row.details().length(), shop.units()),
                Written.size(row.details().width(), shop.units()),
                material == null ? "" : names.getOrDefault(material, ""),
                Written.more(row.details()));
    }

    @GetMapping("/buy-list")
    String buyList(@PathVariable String number, SignedIn me, Model model) {
        return pages.page(number, me, BuyPages.Lengths.NONE, FormErrors.none(), model);
    }

    @PostMapping("/buy-list/lines")
    String intoEstimate(@PathVariable String number, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        BuyLinesToEstimate.Put put = estimate.put(job.id(), me.personId());
        String done = put.lines() == 1
                ? "One material line of the estimate follows the buy list."
                : put.lines() + " material lines of the estimate follow the buy list.";
        Flash.done(
                redirect,
                done
                        + named(" Agreed, offered or in an option already, and no more is needed: ", put.agreed())
                        + named(" On another line as well, so perhaps counted twice: ", put.twice())
                        + named(" Without any price yet, so left out: ", put.unpriced())
                        + named(
                                " Taken off before sizes or formulas changed, so perhaps too little or too much: ",
                                put.stale()));
        return "redirect:/jobs/" + number + "/estimate#materials";
    }

    private static String named(String what, List<String> materials) {
        return materials.isEmpty() ? "" : what + String.join("; ", materials) + ".";
    }
}
