package org.tallywright.server;

import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Where this server's pages are reached from the shop's own machine or network; a proxy before it has an address of its own. */
@Component
public class ShopAddress {
    private final Environment environment;

    ShopAddress(Environment environment) {
        this.environment = environment;
    }

    /** Such as {@code http://127.0.0.1:8080}, without a slash at the end. */
    public String base() {
        String port = environment.getProperty("local.server.port", environment.getProperty("server.port", "8080"));
        return scheme() + "://" + host() + ":" + port;
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
