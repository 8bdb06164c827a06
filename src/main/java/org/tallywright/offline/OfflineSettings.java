package org.tallywright.offline;

import org.springframework.context.annotation.Configuration;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

@Configuration(proxyBeanMethods = false)
class OfflineSettings implements WebMvcConfigurer {
    private final QueuedRequests queued;

    OfflineSettings(QueuedRequests queued) {
        this.queued = queued;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(queued);
    }
}
