package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;

/** A form that is shown again. */
final class Answer {
    private static final int UNPROCESSABLE = 422;

    private Answer() {}

    static void refused(HttpServletResponse response) {
        response.setStatus(UNPROCESSABLE);
    }
}
