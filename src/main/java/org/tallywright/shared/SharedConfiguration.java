package org.tallywright.shared;

import java.time.Clock;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The one clock of the program, and the shop's day by it. */
@Configuration(proxyBeanMethods = false)
class SharedConfiguration {
    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }

    @Bean
    ShopClock shopClock(Clock clock, ObjectProvider<ShopConventions> conventions) {
        return new ShopClock(
                clock,
                () -> conventions.getIfAvailable(() -> ShopConventions.DEFAULT).zone());
    }
}
