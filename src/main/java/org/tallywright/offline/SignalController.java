package org.tallywright.offline;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** What a phone asks before it sends its queue, and the page that stands in for those it cannot reach. */
@Controller
class SignalController {

    /** Who is signed in, and a form token that holds now: the one of a kept page may be older than the session. */
    @GetMapping("/signal")
    @Access({Role.OWNER, Role.LEAD, Role.HELPER, Role.BOOKKEEPER})
    ResponseEntity<Map<String, String>> show(SignedIn me, HttpServletRequest request) {
        CsrfToken token = (CsrfToken) request.getAttribute(CsrfToken.class.getName());
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .contentType(MediaType.APPLICATION_JSON)
                .body(Map.of("person", me.personId().toString(), "token", token == null ? "" : token.getToken()));
    }

    @GetMapping("/no-signal")
    @Access(open = true)
    String blank(Model model) {
        model.addAttribute("title", "No signal");
        return "offline/no-signal";
    }
}
