package org.tallywright.server;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Says where the shop is to be found, once it can be. */
@Component
class AddressLine {
    private final Environment environment;
    private final ShopAddress address;

    AddressLine(Environment environment, ShopAddress address) {
        this.environment = environment;
        this.address = address;
    }

    @EventListener
    void print(ApplicationReadyEvent ready) {
        if (environment.containsProperty("local.server.port")) {
            System.out.println("Tallywright is ready at " + address.base());
        }
    }
}
