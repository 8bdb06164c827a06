package org.tallywright.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.springframework.boot.EnvironmentPostProcessor;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.core.Ordered;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;

/**
 * {@code tallywright.tls=on}: the server speaks TLS with a certificate of its own, kept in the data folder. An owner who
 * has a certificate gives it by {@code server.ssl.certificate} and {@code server.ssl.certificate-private-key} instead.
 */
class TlsSwitch implements EnvironmentPostProcessor, Ordered {
    /** After the properties files are read, so that the switch may stand in one. */
    @Override
    public int getOrder() {
        return ConfigDataEnvironmentPostProcessor.ORDER + 10;
    }

    @Override
    public void postProcessEnvironment(ConfigurableEnvironment environment, SpringApplication application) {
        if (!environment.getProperty("tallywright.tls", "off").equalsIgnoreCase("on")) {
            return;
        }
        DataFolder folder = DataFolder.prepare(Path.of(environment.getRequiredProperty("tallywright.data")));
        SelfSignedCertificate certificate = new SelfSignedCertificate(folder.path());
        try {
            certificate.makeOnce();
            environment
                    .getPropertySources()
                    .addLast(new MapPropertySource(
                            "self-signed certificate",
                            Map.of(
                                    "server.ssl.key-store",
                                    certificate.store().toUri().toString(),
                                    "server.ssl.key-store-type",
                                    "PKCS12",
                                    "server.ssl.key-store-password",
                                    certificate.password())));
        } catch (IOException e) {
            throw new StartRefused(
                    "The TLS certificate in " + folder.path() + " cannot be made or read (" + e.getMessage() + ").", e);
        }
    }
}
