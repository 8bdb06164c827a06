package org.tallywright.people.web;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.people.Crew;
import org.tallywright.people.PersonName;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;

/** The one-time link by which a person sets sign-in name and password. */
@Controller
@RequestMapping("/invitations/{token}")
@Access(open = true)
class InvitationController {
    private final Crew crew;

    InvitationController(Crew crew) {
        this.crew = crew;
    }

    @GetMapping
    String show(@PathVariable String token, Model model, HttpServletResponse response) {
        return page(person(token), "", FormErrors.none(), model, response);
    }

    @PostMapping
    String create(
            @PathVariable String token,
            @RequestParam(defaultValue = "") String signInName,
            @RequestParam(defaultValue = "") String password,
            Model model,
            HttpServletResponse response) {
        PersonName person = person(token);
        try {
            crew.accept(token, signInName, password);
            return "redirect:/sign-in?ready";
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(
                    person,
                    signInName,
                    FormErrors.of(String.valueOf(refused.field()), refused.sentence()),
                    model,
                    response);
        }
    }

    private PersonName person(String token) {
        return crew.invited(token).orElseThrow(() -> new NotHere("invitation"));
    }

    private static String page(
            PersonName person, String signInName, FormErrors errors, Model model, HttpServletResponse response) {
        response.setHeader("X-Robots-Tag", "noindex");
        model.addAttribute("person", person);
        model.addAttribute("signInName", signInName);
        model.addAttribute("errors", errors);
        return "people/invitation";
    }
}
