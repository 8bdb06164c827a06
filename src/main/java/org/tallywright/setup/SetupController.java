package org.tallywright.setup;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.ZoneId;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shop.ShopChoices;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.SessionStart;
import org.tallywright.web.SignedIn;

/** The page an empty shop opens on. Once the shop is made it only points to sign-in. */
@Controller
@Access(open = true)
class SetupController {
    private final SetupCode codes;
    private final Opening opening;
    private final SessionStart sessions;

    SetupController(SetupCode codes, Opening opening, SessionStart sessions) {
        this.codes = codes;
        this.opening = opening;
        this.sessions = sessions;
    }

    @GetMapping("/setup")
    String blank(Model model) {
        if (!codes.shopIsEmpty()) {
            return "redirect:/sign-in";
        }
        return page(model, OpeningForm.blank(Ids.next(), defaultZone()), FormErrors.none());
    }

    @PostMapping("/setup")
    String create(OpeningForm form, Model model, HttpServletRequest request, HttpServletResponse response) {
        if (!codes.shopIsEmpty()) {
            return "redirect:/sign-in";
        }
        try {
            SignedIn me = opening.open(owner(form.id()), form);
            sessions.begin(me, request, response);
            return "redirect:/";
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            String field = refused.field();
            return page(model, form, FormErrors.of(field == null ? "" : field, refused.sentence()));
        }
    }

    private static UUID owner(@Nullable UUID id) {
        return id == null ? Ids.next() : id;
    }

    private static String page(Model model, OpeningForm form, FormErrors errors) {
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("zones", zones());
        model.addAttribute("unitChoices", units());
        return "setup/blank";
    }

    /** What the machine says is a good first guess; the owner chooses. */
    @SuppressWarnings("JavaTimeDefaultTimeZone")
    private static String defaultZone() {
        return ShopChoices.zoneOrUtc(ZoneId.systemDefault().getId()).getId();
    }

    private static Map<String, String> units() {
        Map<String, String> units = new TreeMap<>();
        units.put("imperial", "Inches and feet");
        units.put("metric", "Millimetres and metres");
        return units;
    }

    /** Zone to label, in order. */
    private static Map<String, String> zones() {
        Map<String, String> zones = new TreeMap<>();
        ShopChoices.zones().forEach(zone -> zones.put(zone, zone.replace('_', ' ')));
        return zones;
    }
}
