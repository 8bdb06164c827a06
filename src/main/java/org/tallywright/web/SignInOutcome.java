package org.tallywright.web;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.security.authentication.LockedException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.authentication.AuthenticationSuccessHandler;
import org.springframework.stereotype.Component;

/** Where a sign-in leads: to the page that was asked for, or back with a word why not. */
@Component
class SignInOutcome implements AuthenticationSuccessHandler, AuthenticationFailureHandler {
    @Override
    public void onAuthenticationSuccess(HttpServletRequest request, HttpServletResponse response, Authentication who)
            throws IOException, ServletException {
        response.sendRedirect(request.getContextPath() + ownPath(request.getParameter("next")));
    }

    @Override
    public void onAuthenticationFailure(
            HttpServletRequest request, HttpServletResponse response, AuthenticationException why)
            throws IOException, ServletException {
        String reason = why instanceof LockedException ? "wait" : "no";
        response.sendRedirect(request.getContextPath() + "/sign-in?" + reason);
    }

    /** Only a path on this server; anything else would let a link lead people away. */
    static String ownPath(@Nullable String next) {
        if (next == null || !next.matches("/[A-Za-z0-9_.~%?&=-][A-Za-z0-9_.~%/?&=-]*")) {
            return "/";
        }
        return next;
    }
}
