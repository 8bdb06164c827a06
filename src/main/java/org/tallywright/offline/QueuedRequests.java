package org.tallywright.offline;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.DispatcherServlet;
import org.springframework.web.servlet.FlashMap;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.support.AbstractFlashMapManager;
import org.tallywright.web.SignedIn;

/** Names the signed-in person on every answer, and lets nobody's queue be sent in another's name. */
@Component
class QueuedRequests implements HandlerInterceptor {
    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
            throws IOException {
        SignedIn me = signedIn();
        if (me != null) {
            response.setHeader(Queued.PERSON, me.personId().toString());
        }
        String by = request.getHeader(Queued.BY);
        if (by == null) {
            return true;
        }
        if (me != null && !me.personId().toString().equals(by)) {
            response.sendError(HttpServletResponse.SC_FORBIDDEN);
            return false;
        }
        if (!Queued.NOW.equals(request.getHeader(Queued.WHEN))) {
            // Nobody looks at the next page for it, and fifty such sentences would wait in the session.
            request.setAttribute(DispatcherServlet.FLASH_MAP_MANAGER_ATTRIBUTE, new Silent());
        }
        return true;
    }

    private static @Nullable SignedIn signedIn() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        return authentication != null && authentication.getPrincipal() instanceof SignedIn me ? me : null;
    }

    /** Forgets what a redirect would have said. */
    private static final class Silent extends AbstractFlashMapManager {
        @Override
        protected java.util.@Nullable List<FlashMap> retrieveFlashMaps(HttpServletRequest request) {
            return null;
        }

        @Override
        protected void updateFlashMaps(
                java.util.List<FlashMap> maps, HttpServletRequest request, HttpServletResponse response) {
            // Kept nowhere.
        }
    }
}
