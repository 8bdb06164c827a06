package org.tallywright.web;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/**
 * Makes the hidden token of forms before a page is written. Made in the middle of a long page, its cookie would come after
 * the head of the answer was sent, and the form would be refused.
 */
@ControllerAdvice
class FormToken {
    @ModelAttribute
    void make(HttpServletRequest request) {
        if (request.getAttribute(CsrfToken.class.getName()) instanceof CsrfToken token) {
            token.getToken();
        }
    }
}
