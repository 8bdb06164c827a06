package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import jakarta.servlet.Filter;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.http.HttpMethod;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.web.FilterChainProxy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.UsernamePasswordAuthenticationFilter;
import org.springframework.security.web.authentication.logout.LogoutFilter;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.AnyRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcherEntry;
import org.springframework.test.util.ReflectionTestUtils;
import org.springframework.web.servlet.handler.AbstractUrlHandlerMapping;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.tallywright.AppTest;

/**
 * What answers without a handler of ours (the security chain, files, the framework's page of errors), against {@code
 * authorisation-unmapped/*.csv}: nothing more is let through, and each is asked by every role and by nobody.
 */
@AppTest
class UnmappedRoutesTest {
    /** Of the chain: these pass a request on, refuse it or add to it, and serve no address of their own. */
    private static final Set<String> PASS_ON = Set.of(
            "DisableEncodeUrlFilter",
            "WebAsyncManagerIntegrationFilter",
            "SecurityContextHolderFilter",
            "HeaderWriterFilter",
            "CsrfFilter",
            "RequestCacheAwareFilter",
            "SecurityContextHolderAwareRequestFilter",
            "AnonymousAuthenticationFilter",
            "ExceptionTranslationFilter",
            "FreshPersonFilter",
            "AuthorizationFilter");

    @Autowired
    ApplicationContext context;

    @Autowired
    FilterChainProxy proxy;

    @Autowired
    RequestMappingHandlerMapping requestMappingHandlerMapping;

    List<Route> written = List.of();

    @BeforeEach
    void read() throws Exception {
        written = Routes.unmapped();
    }

    @Test
    void lettingThroughIsWrittenDown() {
        List<String> patterns = new ArrayList<>();
        List<RequestMatcherEntry<?>> rules = rules();
        RequestMatcherEntry<?> last = rules.get(rules.size() - 1);
        assertThat(last.getRequestMatcher()).isSameAs(AnyRequestMatcher.INSTANCE);
        assertThat(last.getEntry().getClass().getSimpleName()).isEqualTo("RouteAccess");
        for (RequestMatcherEntry<?> rule : rules.subList(0, rules.size() - 1)) {
            patterns.add(rule.getRequestMatcher().toString());
        }
        List<String> files = open("GET")
                .map(pattern -> PathPatternRequestMatcher.withDefaults()
                        .matcher(pattern)
                        .toString())
                .toList();
        // Errors and forwards are answers within a request that was judged already.
        assertThat(patterns)
                .filteredOn(pattern -> pattern.startsWith("DispatcherType"))
                .hasSize(2)
                .anyMatch(pattern -> pattern.contains("ERROR"))
                .anyMatch(pattern -> pattern.contains("FORWARD"));
        assertThat(patterns)
                .filteredOn(pattern -> !pattern.startsWith("DispatcherType"))
                .containsExactlyInAnyOrderElementsOf(files);
    }

    private List<RequestMatcherEntry<?>> rules() {
        AuthorizationFilter filter = (AuthorizationFilter) filters()
                .filter(AuthorizationFilter.class::isInstance)
                .findFirst()
                .orElseThrow();
        Object manager = filter.getAuthorizationManager();
        List<?> mappings = (List<?>) Objects.requireNonNull(ReflectionTestUtils.getField(manager, "mappings"));
        List<RequestMatcherEntry<?>> rules = new ArrayList<>();
        mappings.forEach(entry -> rules.add((RequestMatcherEntry<?>) entry));
        return rules;
    }

    private Stream<Filter> filters() {
        List<SecurityFilterChain> chains = proxy.getFilterChains();
        assertThat(chains).hasSize(1);
        return chains.get(0).getFilters().stream();
    }

    private Stream<String> open(String method) {
        return written.stream()
                .filter(route -> route.open() && route.method().equals(method))
                .map(Route::pattern);
    }

    @Test
    void filtersAnswerOnlyWhatIsWrittenDown() {
        Set<String> answered = new TreeSet<>();
        filters().forEach(filter -> {
            if (filter instanceof UsernamePasswordAuthenticationFilter) {
                answered.add(matcher(filter, "requiresAuthenticationRequestMatcher"));
            } else if (filter instanceof LogoutFilter) {
                answered.add(matcher(filter, "logoutRequestMatcher"));
            } else {
                assertThat(PASS_ON).contains(filter.getClass().getSimpleName());
            }
        });
        assertThat(answered)
                .containsExactlyInAnyOrderElementsOf(open("POST")
                        .map(pattern -> PathPatternRequestMatcher.withDefaults()
                                .matcher(HttpMethod.POST, pattern)
                                .toString())
                        .toList());
    }

    private static String matcher(Filter filter, String field) {
        return ((RequestMatcher) Objects.requireNonNull(ReflectionTestUtils.getField(filter, field))).toString();
    }

    @Test
    void filesAndTheFrameworkServeOnlyWhatIsWrittenDown() {
        Set<String> served = new TreeSet<>(Routes.foreign(requestMappingHandlerMapping));
        context.getBeansOfType(AbstractUrlHandlerMapping.class)
                .values()
                .forEach(mapping -> served.addAll(mapping.getHandlerMap().keySet()));
        assertThat(served).isNotEmpty();
        assertThat(written.stream().map(Route::pattern).toList()).containsAll(served);
    }

    @Test
    void letsInWhoIsNamedAndNobodyElse() {
        WholeShop shop = new WholeShop(context);
        List<String> wrong = new ArrayList<>();
        for (Route route : written) {
            String path = route.pattern().replace("/css/**", "/css/tokens.css").replace("/js/**", "/js/page.js");
            for (Reader reader : Reader.values()) {
                MockHttpServletResponse answer = shop.ask(reader, request(HttpMethod.valueOf(route.method()), path));
                String fault = AuthorisationMatrixTest.fault(route, reader, path, answer);
                if (fault != null) {
                    wrong.add(reader.code() + " " + route.key() + ": " + fault);
                }
                shop.restore();
            }
        }
        assertThat(wrong).isEmpty();
    }
}
