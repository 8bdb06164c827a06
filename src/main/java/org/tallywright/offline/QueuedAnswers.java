package org.tallywright.offline;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpServletResponseWrapper;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Tells a queue where a redirect would lead, with 204 in its place: so it can tell a save that was kept from one that ended at
 * the sign-in. It stands before the security chain, whose redirects are meant too.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 20)
class QueuedAnswers extends OncePerRequestFilter {
    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return request.getHeader(Queued.BY) == null;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        chain.doFilter(request, new Told(response));
    }

    private static final class Told extends HttpServletResponseWrapper {
        Told(HttpServletResponse response) {
            super(response);
        }

        @Override
        public void sendRedirect(String location) throws IOException {
            sendRedirect(location, SC_FOUND, true);
        }

        @Override
        public void sendRedirect(String location, int code, boolean clear) throws IOException {
            if (clear) {
                resetBuffer();
            }
            setHeader(Queued.WENT_TO, location);
            setStatus(SC_NO_CONTENT);
            flushBuffer();
        }
    }
}
