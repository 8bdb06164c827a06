package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import java.net.URI;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.http.HttpMethod;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.tallywright.AppTest;

/** Every route with every role and without a sign-in, against what {@code authorisation/*.csv} says. */
@AppTest
class AuthorisationMatrixTest {
    private static final String SIGN_IN = "/sign-in";

    @Autowired
    ApplicationContext context;

    @Autowired
    RequestMappingHandlerMapping requestMappingHandlerMapping;

    @Autowired
    JdbcClient jdbc;

    List<Route> written = List.of();

    @BeforeEach
    void read() throws Exception {
        written = Routes.written();
    }

    @Test
    void namesEveryRouteOnceAndNoOther() {
        List<String> keys = written.stream().map(Route::key).toList();
        assertThat(keys).as("a route named twice").doesNotHaveDuplicates();
        Set<String> mapped = Routes.mapped(requestMappingHandlerMapping);
        assertThat(without(mapped, keys)).as("routes that no file names").isEmpty();
        assertThat(without(keys, mapped)).as("rows that no route answers").isEmpty();
        assertThat(written.stream().flatMap(route -> route.roles().stream()))
                .allMatch(role -> role.matches("open|(owner|lead|helper|bookkeeper)(:[a-z]+)?"));
        assertThat(written.stream().filter(Route::open))
                .allMatch(route -> route.roles().size() == 1);
    }

    private static Set<String> without(Collection<String> all, Collection<String> taken) {
        Set<String> rest = new TreeSet<>(all);
        rest.removeAll(taken);
        return rest;
    }

    @Test
    void letsInWhoIsNamedAndNobodyElse() {
        WholeShop shop = new WholeShop(context);
        RouteValues values = new RouteValues(jdbc, shop);
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (Route route : written) {
            for (Reader reader : Reader.values()) {
                for (String path : values.paths(route.pattern(), reader)) {
                    MockHttpServletResponse answer =
                            shop.ask(reader, request(HttpMethod.valueOf(route.method()), URI.create(path)));
                    String fault = fault(route, reader, path, answer);
                    if (fault != null) {
                        wrong.add(reader.code() + " " + route.method() + " " + path + ": " + fault);
                    }
                    shop.restore();
                    asked++;
                }
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(asked).isGreaterThanOrEqualTo(written.size() * Reader.values().length);
    }

    /** What is wrong with this answer to this reader, or null. */
    static @Nullable String fault(Route route, Reader reader, String path, MockHttpServletResponse answer) {
        int status = answer.getStatus();
        boolean sentToSignIn = SIGN_IN.equals(answer.getRedirectedUrl());
        String got = status + (sentToSignIn ? " to sign-in" : "");
        if (status >= 500) {
            return got + " " + answer.getHeader("X-Broken");
        }
        if (route.admits(reader, path)) {
            return status == 403 || sentToSignIn && !route.open() ? got + ", but may" : null;
        }
        if (reader == Reader.STRANGER) {
            return sentToSignIn ? null : got + ", but is nobody";
        }
        return status == 403 ? null : got + ", but may not";
    }

    /** Without the hidden token no form is taken, whoever sends it. */
    @Test
    void refusesEveryFormWithoutItsToken() throws Exception {
        WholeShop shop = new WholeShop(context);
        RouteValues values = new RouteValues(jdbc, shop);
        Map<String, String> before = shop.content();
        for (Route route : written) {
            if (!route.method().equals("POST")) {
                continue;
            }
            for (String path : values.paths(route.pattern(), Reader.OWNER)) {
                assertThat(shop.askWithoutToken(Reader.OWNER, request(HttpMethod.POST, URI.create(path)))
                                .getStatus())
                        .as(path)
                        .isEqualTo(403);
            }
        }
        assertThat(shop.content()).isEqualTo(before);
    }
}
