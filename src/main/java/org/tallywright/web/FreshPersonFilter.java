package org.tallywright.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.web.filter.OncePerRequestFilter;

/** Replaces the remembered person by the one the database knows now; ends the session when there is none. */
class FreshPersonFilter extends OncePerRequestFilter {
    private final PersonOfRequest people;

    FreshPersonFilter(PersonOfRequest people) {
        this.people = people;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Authentication remembered = SecurityContextHolder.getContext().getAuthentication();
        if (remembered != null && remembered.getPrincipal() instanceof SignedIn me) {
            Optional<SignedIn> now = people.current(me);
            if (now.isPresent()) {
                SecurityContextHolder.setContext(new SecurityContextImpl(authenticated(now.get())));
            } else {
                SecurityContextHolder.clearContext();
                HttpSession session = request.getSession(false);
                if (session != null) {
                    session.invalidate();
                }
            }
        }
        chain.doFilter(request, response);
    }

    static Authentication authenticated(SignedIn me) {
        return UsernamePasswordAuthenticationToken.authenticated(
                me, null, List.of(new SimpleGrantedAuthority("ROLE_" + me.role().name())));
    }
}
