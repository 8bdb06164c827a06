package org.tallywright.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.stereotype.Component;

/** Signs a person in without the sign-in form: after set-up and after an invitation was used. */
@Component
public class SessionStart {
    private final HttpSessionSecurityContextRepository sessions = new HttpSessionSecurityContextRepository();

    /** Ends the session there may be, so that its id is not carried over, and starts a new one. */
    public void begin(SignedIn me, HttpServletRequest request, HttpServletResponse response) {
        var old = request.getSession(false);
        if (old != null) {
            old.invalidate();
        }
        SecurityContext context = new SecurityContextImpl(FreshPersonFilter.authenticated(me));
        SecurityContextHolder.setContext(context);
        sessions.saveContext(context, request, response);
    }
}
