package org.tallywright.shop.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.shop.Shop;
import org.tallywright.shop.ShopSettings;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

@Controller
@RequestMapping("/shop")
@Access(Role.OWNER)
class ShopController {
    private final ShopSettings settings;

    ShopController(ShopSettings settings) {
        this.settings = settings;
    }

    @GetMapping
    String show(Model model) {
        return page(ShopForm.of(settings.current()), FormErrors.none(), model);
    }

    @PostMapping
    String update(ShopForm form, SignedIn me, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        FormReader read = new FormReader();
        Shop shop = form.read(read, settings.current().demo());
        if (shop == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(form, read.errors(), model);
        }
        settings.change(shop, me);
        Flash.done(redirect, "Settings saved.");
        return "redirect:/shop";
    }

    private String page(ShopForm form, FormErrors errors, Model model) {
        Map<String, String> units = new LinkedHashMap<>();
        units.put("imperial", "Inches and feet");
        units.put("metric", "Millimetres and metres");
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("unitChoices", units);
        model.addAttribute("demo", settings.current().demo());
        return "shop/show";
    }
}
