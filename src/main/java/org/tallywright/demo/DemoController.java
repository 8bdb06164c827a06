package org.tallywright.demo;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.setup.SetupCode;
import org.tallywright.shared.Refused;
import org.tallywright.shop.ShopChoices;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SessionStart;

/** Opens the demo shop from the set-up page and empties it again. */
@Controller
class DemoController {
    private final DemoShop demo;
    private final SetupCode codes;
    private final SessionStart sessions;

    DemoController(DemoShop demo, SetupCode codes, SessionStart sessions) {
        this.demo = demo;
        this.codes = codes;
        this.sessions = sessions;
    }

    @PostMapping("/setup/demo")
    @Access(open = true)
    String create(
            @RequestParam(defaultValue = "") String code,
            @RequestParam(defaultValue = "") String timeZone,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        if (!codes.shopIsEmpty()) {
            return "redirect:/sign-in";
        }
        try {
            sessions.begin(demo.load(code, ShopChoices.zoneOrUtc(timeZone)), request, response);
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            model.addAttribute("errors", FormErrors.of("code", refused.sentence()));
            model.addAttribute("code", code);
            return "demo/blank";
        }
        Flash.done(redirect, "The demo shop is open. You are Ada Fenn, its owner.");
        return "redirect:/shop/demo";
    }

    @GetMapping("/shop/demo")
    @Access(Role.OWNER)
    String show(Model model) {
        return page(model, FormErrors.none());
    }

    /** Typed out, because it takes everything with it. */
    @PostMapping("/shop/demo/removal")
    @Access(Role.OWNER)
    String destroy(@RequestParam(defaultValue = "") String word, Model model, HttpServletResponse response) {
        if (!word.strip().equalsIgnoreCase("remove")) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(model, FormErrors.of("word", "Type the word remove to empty this shop."));
        }
        String code = demo.remove();
        System.out.println("The demo shop was removed. Set-up code: " + code);
        model.addAttribute("code", code);
        return "demo/removed";
    }

    private String page(Model model, FormErrors errors) {
        model.addAttribute("errors", errors);
        model.addAttribute("password", DemoPeople.PASSWORD);
        model.addAttribute("own", demo.ownEntries());
        return "demo/show";
    }
}
