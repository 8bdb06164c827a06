package org.tallywright.setup;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Prints the code of an empty shop after the address line. */
@Component
class SetupNotice {
    private final SetupCode codes;

    SetupNotice(SetupCode codes) {
        this.codes = codes;
    }

    @EventListener(ApplicationReadyEvent.class)
    @Order
    void print() {
        codes.next()
                .ifPresent(code ->
                        System.out.println("This shop is empty. Open /setup there and type the set-up code: " + code));
    }
}
