package org.tallywright.takeoff.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobHeads;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.BuyLine;
import org.tallywright.takeoff.BuyList;
import org.tallywright.takeoff.BuyLister;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The buy list as a page, with what was typed into it and refused. */
@Component
class BuyPages {
    private final JobHeads heads;
    private final BuyLister lister;
    private final ShopConventions shop;

    BuyPages(JobHeads heads, BuyLister lister, ShopConventions shop) {
        this.heads = heads;
        this.lister = lister;
        this.shop = shop;
    }

    /**
     * The lengths a material is sold in, as typed beside it.
     *
     * @param material null where nothing was typed
     */
    record Lengths(@Nullable UUID material, String barLengths, String kerf, String trim) {
        static final Lengths NONE = new Lengths(null, "", "", "");

        Lengths {
            barLengths = barLengths == null ? "" : barLengths;
            kerf = kerf == null ? "" : kerf;
            trim = trim == null ? "" : trim;
        }

        /** What stands in the boxes of one material: what was typed for it, else what is usual. */
        Lengths at(UUID other, Units units) {
            return other.equals(material)
                    ? this
                    : new Lengths(
                            other, "", units == Units.METRIC ? "3.2" : "1/8\"", units == Units.METRIC ? "12" : "1/2\"");
        }
    }

    String page(String number, SignedIn me, Lengths typed, FormErrors errors, Model model) {
        JobHead head = heads.find(number, me, "materials");
        BuyList list = lister.of(head.job().id());
        boolean open = !head.job().isClosed();
        model.addAttribute("head", head);
        model.addAttribute("list", list);
        model.addAttribute("open", open);
        model.addAttribute("edits", me.is(Role.OWNER));
        model.addAttribute("typed", new Boxes(typed, errors, shop.units()));
        model.addAttribute("lengthUnit", Written.suffix(shop.units()));
        model.addAttribute(
                "used", list.lines().stream().anyMatch(line -> !line.offcuts().isEmpty()));
        model.addAttribute("unheld", open && list.lines().stream().anyMatch(BuyPages::hasUnheld));
        model.addAttribute(
                "anyHeld",
                open && (!list.unused().isEmpty() || list.lines().stream().anyMatch(BuyPages::hasHeld)));
        return "takeoff/buy-list";
    }

    private static boolean hasUnheld(BuyLine line) {
        return line.offcuts().stream().anyMatch(offcut -> !offcut.held());
    }

    private static boolean hasHeld(BuyLine line) {
        return line.offcuts().stream().anyMatch(BuyLine.Offcut::held);
    }

    /** The boxes of each material whose lengths are wanted. */
    record Boxes(Lengths typed, FormErrors refused, Units units) {
        public Lengths of(UUID material) {
            return typed.at(material, units);
        }

        public FormErrors errors(UUID material) {
            return material.equals(typed.material()) ? refused : FormErrors.none();
        }
    }
}
