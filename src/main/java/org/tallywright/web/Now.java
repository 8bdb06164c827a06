package org.tallywright.web;

import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The one clock of the server; tests bring their own. */
@Configuration(proxyBeanMethods = false)
class Now {
    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}
