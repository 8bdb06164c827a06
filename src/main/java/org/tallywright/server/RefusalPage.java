package org.tallywright.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ErrorReportValve;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;

/**
 * Our own page for what the web server refuses before any of our pages is asked, such as an address with an encoded
 * null byte or slash in it. Templates are out of reach there, so the few lines of it stand here.
 */
class RefusalPage extends ErrorReportValve {
    private static final int FIRST_REFUSAL = 400;

    private static final String PAGE = """
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
            <meta name="color-scheme" content="light dark">
            <title>%1$s</title>
            <link rel="icon" type="image/svg+xml" href="/favicon.svg">
            <link rel="stylesheet" href="/css/tokens.css">
            <link rel="stylesheet" href="/css/reset.css">
            <link rel="stylesheet" href="/css/base.css">
            <link rel="stylesheet" href="/css/layout.css">
            <link rel="stylesheet" href="/css/button.css">
            </head>
            <body class="plain">
            <header class="mast"><div class="mast-in"><a class="mark" href="/">Tallywright</a></div></header>
            <main class="page" id="main"><h1>%1$s</h1><div class="flow"><p>%2$s</p>
            <div class="actions"><a class="button second" href="/">%3$s</a></div></div></main>
            </body>
            </html>
            """;

    private final MessageSource words;

    RefusalPage(MessageSource words) {
        this.words = words;
    }

    @Override
    protected void report(Request request, Response response, @Nullable Throwable failure) {
        if (response.getStatus() < FIRST_REFUSAL || response.getContentWritten() > 0 || !response.setErrorReported()) {
            return;
        }
        try {
            response.setContentType("text/html");
            response.setCharacterEncoding(StandardCharsets.UTF_8);
            response.setHeader("Content-Security-Policy", "default-src 'none'; style-src 'self'; img-src 'self'");
            response.setHeader("X-Content-Type-Options", "nosniff");
            response.setHeader("Cache-Control", "no-store");
            response.getReporter()
                    .write(PAGE.formatted(
                            word("web.error.title"), sentence(response.getStatus()), word("web.problem.home")));
            response.finishResponse();
        } catch (IOException gone) {
            container.getLogger().debug("Nobody waits for the answer any more", gone);
        }
    }

    private String sentence(int status) {
        return status == FIRST_REFUSAL ? word("web.error.unread") : word("web.error." + status);
    }

    /** Our own words, which hold no sign of HTML. */
    private String word(String key) {
        String other = words.getMessage("web.error.other", null, Locale.ENGLISH);
        return String.valueOf(words.getMessage(key, null, other, Locale.ENGLISH));
    }
}
