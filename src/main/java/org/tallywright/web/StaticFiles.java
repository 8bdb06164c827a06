package org.tallywright.web;

import java.time.Duration;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.CacheControl;
import org.springframework.web.servlet.config.annotation.ResourceChainRegistration;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.springframework.web.servlet.resource.VersionResourceResolver;

/**
 * Style sheets and scripts, under addresses that carry the hash of their content and so may be kept for long.
 *
 * <p>Only these folders are mapped. Every link of a page is looked up among the mapped files for such an address; with
 * all paths mapped, that search through the class path took half of a page's time.
 */
@Configuration(proxyBeanMethods = false)
class StaticFiles implements WebMvcConfigurer {
    /** Addresses of files; open to everybody, as {@link SecurityChain} says. A browser asks for the .ico unbidden. */
    static final String[] ADDRESSES = {"/css/**", "/js/**", "/favicon.ico", "/favicon.svg", "/robots.txt", "/sw.js"};

    private static final CacheControl KEPT =
            CacheControl.maxAge(Duration.ofDays(365)).cachePublic();
    private static final CacheControl SHORT = CacheControl.maxAge(Duration.ofHours(1));

    @Override
    public void addResourceHandlers(ResourceHandlerRegistry registry) {
        kept(registry, "css").addResolver(new StyleBundle());
        kept(registry, "js");
        registry.addResourceHandler("/favicon.svg", "/robots.txt", "/sw.js")
                .addResourceLocations("classpath:/static/")
                .setCacheControl(SHORT);
    }

    private static ResourceChainRegistration kept(ResourceHandlerRegistry registry, String folder) {
        return registry.addResourceHandler("/" + folder + "/**")
                .addResourceLocations("classpath:/static/" + folder + "/")
                .setCacheControl(KEPT)
                .resourceChain(true)
                .addResolver(new VersionResourceResolver().addContentVersionStrategy("/**"));
    }
}
