package org.tallywright.web;

import jakarta.servlet.DispatcherType;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.NullRequestCache;

/** One chain for the whole server: static files are open, every other route asks {@link RouteAccess}. */
@Configuration(proxyBeanMethods = false)
class SecurityChain {
    private static final String CONTENT_POLICY =
            "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; "
                    + "script-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    @Bean
    SecurityFilterChain pages(HttpSecurity http, RouteAccess routes, PersonOfRequest people, SignInOutcome outcome)
            throws Exception {
        return http.authorizeHttpRequests(
                        rules -> rules.dispatcherTypeMatchers(DispatcherType.ERROR, DispatcherType.FORWARD)
                                .permitAll()
                                .requestMatchers(StaticFiles.ADDRESSES)
                                .permitAll()
                                .anyRequest()
                                .access(routes))
                .addFilterBefore(new FreshPersonFilter(people), AuthorizationFilter.class)
                // A cookie, not the session: pages without sign-in then store nothing on the server.
                .csrf(csrf -> csrf.csrfTokenRepository(tokens()))
                .formLogin(form -> form.loginPage("/sign-in")
                        .usernameParameter("signInName")
                        .passwordParameter("password")
                        .successHandler(outcome)
                        .failureHandler(outcome))
                .logout(out -> out.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?out"))
                .requestCache(cache -> cache.requestCache(new NullRequestCache()))
                .httpBasic(AbstractHttpConfigurer::disable)
                .headers(headers -> headers.contentSecurityPolicy(policy -> policy.policyDirectives(CONTENT_POLICY))
                        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN)))
                .build();
    }

    private static CookieCsrfTokenRepository tokens() {
        CookieCsrfTokenRepository tokens = new CookieCsrfTokenRepository();
        tokens.setCookieName("tallywright-form");
        tokens.setCookieCustomizer(
                cookie -> cookie.httpOnly(true).sameSite("Lax").maxAge(Duration.ofDays(30)));
        return tokens;
    }
}
