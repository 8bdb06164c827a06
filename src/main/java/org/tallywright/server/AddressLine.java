package org.tallywright.server;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Says where the shop is to be found, once it can be. */
@Component
class AddressLine {
    private final Environment environment;

    AddressLine(Environment environment) {
        this.environment = environment;
    }

    @EventListener
    void print(ApplicationReadyEvent ready) {
        String port = environment.getProperty("local.server.port");
        if (port != null) {
            System.out.println("Tallywright is ready at " + scheme() + "://" + host() + ":" + port);
        }
    }

    private String scheme() {
        boolean tls = environment.containsProperty("server.ssl.key-store")
                || environment.containsProperty("server.ssl.certificate")
                || environment.containsProperty("server.ssl.bundle");
        return tls ? "https" : "http";
    }

    /** A server on all interfaces is shown under the name of this machine, which other devices can use. */
    private String host() {
        String address = environment.getProperty("server.address", "127.0.0.1");
        boolean everywhere = address.equals("0.0.0.0") || address.equals("::") || address.isBlank();
        return everywhere ? LocalNames.hostName() : address;
    }
}
