package org.tallywright.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Says "too large" of a form with files before anything reads it. Left to the web server, such a form would arrive without
 * any of its fields, and be refused for its missing token in words that say nothing of its size.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
class UploadLimit extends OncePerRequestFilter {
    /** Bytes of a form with a file, and of one with several photos; the limits of the web server are not below these. */
    private static final long FILE = 12L << 20;

    private static final long PHOTOS = 80L << 20;

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String type = request.getContentType();
        if (type != null && type.regionMatches(true, 0, "multipart/", 0, 10)) {
            long length = request.getContentLengthLong();
            if (length > (request.getRequestURI().endsWith("/photos") ? PHOTOS : FILE)) {
                response.sendError(HttpStatus.CONTENT_TOO_LARGE.value());
                return;
            }
            if (length < 0 && request.getHeader("Transfer-Encoding") != null) {
                response.sendError(HttpStatus.LENGTH_REQUIRED.value());
                return;
            }
        }
        chain.doFilter(request, response);
    }
}
