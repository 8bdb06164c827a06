package org.tallywright.people.web;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.people.Crew;
import org.tallywright.shared.Refused;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A person's own account. */
@Controller
@RequestMapping("/account")
@Access({Role.OWNER, Role.LEAD, Role.HELPER, Role.BOOKKEEPER})
class AccountController {
    private final Crew crew;

    AccountController(Crew crew) {
        this.crew = crew;
    }

    @GetMapping
    String show(Model model) {
        model.addAttribute("errors", FormErrors.none());
        return "people/account";
    }

    /** A new password ends every session, this one too: the person signs in with it at once and knows that it works. */
    @PostMapping("/password")
    String update(
            SignedIn me,
            @RequestParam(defaultValue = "") String present,
            @RequestParam(defaultValue = "") String password,
            Model model,
            HttpServletResponse response) {
        try {
            crew.changePassword(me, present, password);
            return "redirect:/sign-in?out";
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            model.addAttribute("errors", FormErrors.of(String.valueOf(refused.field()), refused.sentence()));
            return "people/account";
        }
    }

    @PostMapping("/sessions/ending")
    String endSessions(SignedIn me) {
        crew.signOutEverywhere(me.personId(), me);
        return "redirect:/sign-in?out";
    }
}
