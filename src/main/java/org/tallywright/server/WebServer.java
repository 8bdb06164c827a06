package org.tallywright.server;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.MessageSource;
import org.springframework.core.Ordered;
import org.springframework.stereotype.Component;

/** Puts our own page for refusals behind the web server's, so that ours answers first. */
@Component
class WebServer implements WebServerFactoryCustomizer<TomcatServletWebServerFactory>, Ordered {
    private final MessageSource words;

    WebServer(MessageSource words) {
        this.words = words;
    }

    /** After the framework's own, which adds the page that ours takes the place of. */
    @Override
    public int getOrder() {
        return LOWEST_PRECEDENCE;
    }

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        factory.addContextCustomizers(
                context -> context.getParent().getPipeline().addValve(new RefusalPage(words)));
    }
}
