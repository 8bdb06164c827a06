package org.tallywright.people.web;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.web.Access;
import org.tallywright.web.SignedIn;

@Controller
@Access(open = true)
class SignInController {
    private final JdbcClient jdbc;

    SignInController(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An empty shop has nobody to sign in: it leads to set-up. */
    @GetMapping("/sign-in")
    String show(
            Model model,
            @Nullable SignedIn me,
            @RequestParam(required = false) @Nullable String no,
            @RequestParam(required = false) @Nullable String wait) {
        if (me != null) {
            return "redirect:/";
        }
        if (jdbc.sql("select not exists (select from person)")
                .query(Boolean.class)
                .single()) {
            return "redirect:/setup";
        }
        model.addAttribute("refused", no != null ? "people.signIn.no" : wait != null ? "people.signIn.wait" : null);
        return "people/sign-in";
    }
}
