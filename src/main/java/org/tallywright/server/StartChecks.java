package org.tallywright.server;

import org.springframework.boot.EnvironmentPostProcessor;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.core.Ordered;
import org.springframework.core.env.ConfigurableEnvironment;

/** Looks at what would end the start late, before a database is started or changed for it: the certificate and the port. */
class StartChecks implements EnvironmentPostProcessor, Ordered {
    /** After the switch for TLS, which gives a certificate of its own. */
    @Override
    public int getOrder() {
        return ConfigDataEnvironmentPostProcessor.ORDER + 20;
    }

    @Override
    public void postProcessEnvironment(ConfigurableEnvironment environment, SpringApplication application) {
        if (application.getWebApplicationType() != WebApplicationType.SERVLET) {
            return;
        }
        GivenCertificate.of(environment).refuseUnlessReadable();
        ListeningPort.of(environment).refuseUnlessFree();
    }
}
