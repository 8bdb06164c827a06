package org.tallywright.demo;

import java.time.ZoneId;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.tallywright.shop.ShopChoices;

/** {@code tallywright.demo=true} fills an empty shop at the start; a shop with anything in it is left alone. */
@Component
@ConditionalOnProperty("tallywright.demo")
class DemoOnStart {
    private final DemoShop demo;

    DemoOnStart(DemoShop demo) {
        this.demo = demo;
    }

    /** Before the set-up notice, which then has nothing to print. */
    @EventListener(ApplicationReadyEvent.class)
    @Order(Ordered.HIGHEST_PRECEDENCE + 100)
    @SuppressWarnings("JavaTimeDefaultTimeZone")
    void load() {
        if (demo.loadIntoEmptyShop(ShopChoices.zoneOrUtc(ZoneId.systemDefault().getId()))) {
            System.out.println("The demo shop is loaded. Sign in as ada, jonas or mirel with: " + DemoPeople.PASSWORD);
        }
    }
}
