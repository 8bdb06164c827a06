package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.tallywright.AppTest;

/**
 * Bad input of every kind into every box of every form, one bad value at a time beside good ones. It is refused with a clear
 * sentence and changes no row of the shop, or it is text that may be written, and then it is kept as typed; never an error
 * of the server. {@code -Dhostile=all} tries each value in each box; without it each box gets a share that moves
 * on from box to box, and is left out or sent twice by turns.
 */
@AppTest
class HostileInputTest {
    private static final int SHARE = 1;
    private static final boolean ALL = "all".equals(System.getProperty("hostile"));

    @Autowired
    ApplicationContext context;

    @Autowired
    RequestMappingHandlerMapping requestMappingHandlerMapping;

    @Autowired
    JdbcClient jdbc;

    private final Set<String> wrong = new TreeSet<>();
    private final Map<Integer, Integer> statuses = new TreeMap<>();
    private int turn;

    @Test
    void refusesInWordsAndChangesNothing() throws Exception {
        WholeShop shop = new WholeShop(context);
        Map<String, String> kept = shop.content();
        List<Hostile> values = new ArrayList<>(Hostile.ALL);
        values.addAll(Hostile.foreign(shop));
        Map<String, Form> forms = forms(shop);
        for (Form form : forms.values()) {
            for (String box : form.fields().keySet()) {
                for (Hostile hostile : share(values)) {
                    String said = form.action() + " " + box + "=" + hostile.what();
                    send(shop, kept, said, hostile, form.with(Map.of(box, hostile.value())));
                }
                for (Runnable oddly : oddly(shop, kept, form, box)) {
                    oddly.run();
                }
            }
            send(shop, kept, form.action() + " with nothing", null, post(URI.create(form.action())));
            Map<String, String> all = new LinkedHashMap<>(form.fields());
            all.replaceAll((name, value) -> Hostile.ALL.get(0).value());
            send(shop, kept, form.action() + " all over-long", Hostile.ALL.get(0), form.with(all));
        }
        System.out.println("Hostile input: " + forms.size() + " forms, answers by status " + statuses);
        assertThat(wrong).isEmpty();
        assertThat(statuses.values().stream().mapToInt(n -> n).sum()).isGreaterThan(800);
        // Every request carries its token; requests without one are the matrix test's.
        assertThat(statuses).containsKeys(404, 409, 422);
    }

    /** Every form of the owner's pages, and for a route that none of them leads to a bare one. */
    private Map<String, Form> forms(WholeShop shop) throws Exception {
        RouteValues values = new RouteValues(jdbc, shop);
        Map<String, Form> forms = new TreeMap<>();
        for (Reader reader : List.of(Reader.OWNER, Reader.STRANGER)) {
            for (Crawl.Page page : Crawl.of(shop, values, Routes.written(), reader)) {
                for (Form form : Form.of(page)) {
                    String path = form.action().replaceFirst("\\?.*", "");
                    String route = Routes.serving(requestMappingHandlerMapping, RequestMethod.POST, path);
                    if (!route.isEmpty()) {
                        forms.merge(
                                route + kindOf(path),
                                form,
                                (a, b) -> b.fields().size() > a.fields().size() ? b : a);
                    }
                }
            }
        }
        int found = forms.size();
        for (Route route : Routes.written()) {
            if (route.method().equals("POST")
                    && forms.keySet().stream().noneMatch(key -> key.startsWith(route.pattern() + " "))) {
                String path = values.paths(route.pattern(), Reader.OWNER).get(0);
                Map<String, String> bare =
                        new LinkedHashMap<>(Map.of("id", "", "version", "0", "note", "", "name", ""));
                forms.put(route.pattern() + " bare", new Form("", path, bare, Map.of()));
            }
        }
        System.out.println(
                "Hostile input: " + found + " forms on pages, " + (forms.size() - found) + " routes without one");
        return forms;
    }

    private static String kindOf(String path) {
        return " " + path.replaceAll("[^a-z/]+", "");
    }

    /** The box left out, and the box sent twice; by turns where not all is tried. */
    private List<Runnable> oddly(WholeShop shop, Map<String, String> kept, Form form, String box) {
        Runnable without = () -> send(shop, kept, form.action() + " without " + box, null, form.without(box));
        Runnable twice = () -> send(
                shop,
                kept,
                form.action() + " twice " + box,
                null,
                form.untouched().param(box, "-1", "\0"));
        return ALL ? List.of(without, twice) : List.of(turn % 2 == 0 ? without : twice);
    }

    private List<Hostile> share(List<Hostile> values) {
        if (ALL) {
            return values;
        }
        List<Hostile> share = new ArrayList<>();
        for (int n = 0; n < SHARE; n++) {
            share.add(values.get(turn++ % values.size()));
        }
        return share;
    }

    private void send(
            WholeShop shop,
            Map<String, String> kept,
            String said,
            @Nullable Hostile hostile,
            MockHttpServletRequestBuilder request) {
        MockHttpServletResponse answer = shop.ask(Reader.OWNER, request);
        int status = answer.getStatus();
        statuses.merge(status, 1, Integer::sum);
        if (status >= 500) {
            wrong.add(said + ": " + status + " " + answer.getHeader("X-Broken"));
        } else if (status >= 400) {
            if (!clear(answer)) {
                wrong.add(said + ": " + status + " without a sentence");
            }
            if (shop.wrote() && !shop.content().equals(kept)) {
                wrong.add(said + ": " + status + ", but changed " + Keeping.changed(kept, shop.content()));
            }
        } else if (hostile != null && hostile.sort() == Hostile.Sort.NOWHERE && shop.wrote() && taken(shop, hostile)) {
            wrong.add(said + ": " + status + " and taken");
        }
        shop.restore();
    }

    /** The page says in a sentence what is wrong: in its summary of refusals, beside a box or as the problem. */
    private static boolean clear(MockHttpServletResponse answer) {
        Document page = Jsoup.parse(Crawl.read("", answer).body());
        return page.select(".error, .summary li, main p, .flash").eachText().stream()
                .anyMatch(text -> text.length() > 12 && !text.contains("Exception"));
    }

    private boolean taken(WholeShop shop, Hostile hostile) {
        String start = hostile.mark();
        for (String column : columns(shop)) {
            String[] parts = column.split("\\.");
            if (shop.count(parts[0] + " where strpos(" + parts[1] + ", '" + start + "') > 0 and length(" + parts[1]
                            + ") > 2")
                    > 0) {
                return true;
            }
        }
        return false;
    }

    private List<String> columns(WholeShop shop) {
        return jdbc.sql("""
                        select table_name || '.' || column_name from information_schema.columns join pg_class on relname = table_name
                        where table_schema = 'public' and data_type = 'text' and relkind = 'r' and table_name !~ 'flyway|spring'""").query(String.class).list();
    }

    /** Ids, numbers, dates and words in the address that are none. */
    @Test
    void answersBadAddressesWithNotHere() throws Exception {
        WholeShop shop = new WholeShop(context);
        RouteValues values = new RouteValues(jdbc, shop);
        Map<String, String> kept = shop.content();
        List<String> bad = List.of(
                "x",
                "-1",
                "0000-00-00",
                "9999-12-31",
                "26-999",
                "99-9999999999",
                "%F0%9F%9A%80",
                "..%2f..",
                "%00",
                "'%20or%201=1",
                "0199aaaa-bbbb-7ccc-8ddd-eeeeeeeeeeee",
                "y".repeat(3000));
        int asked = 0;
        for (Route route : Routes.written()) {
            if (!route.pattern().contains("{")) {
                continue;
            }
            for (int n = 0; n < (ALL ? bad.size() : 4); n++) {
                String value = bad.get((asked + n) % bad.size());
                String pattern = route.pattern()
                        .replaceFirst("\\{[^}]*}$", value)
                        .replaceFirst(
                                "(/[a-z-]+)/\\{[^}]*}(/[a-z.-]+)$",
                                "$1/" + java.util.regex.Matcher.quoteReplacement(value) + "$2");
                // An id of this very minute may hold "-1" itself, so the path says nothing of what was put in.
                if (pattern.equals(route.pattern())) {
                    continue;
                }
                String path = values.paths(pattern, Reader.OWNER).get(0);
                MockHttpServletRequestBuilder request =
                        route.method().equals("GET") ? get(URI.create(path)) : post(URI.create(path));
                MockHttpServletResponse answer = shop.ask(Reader.OWNER, request);
                String said = route.method() + " " + path.substring(0, Math.min(90, path.length())) + ": "
                        + answer.getStatus();
                if (answer.getStatus() >= 500) {
                    wrong.add(said + " " + answer.getHeader("X-Broken"));
                } else if (answer.getStatus() < 400 && !path.contains("9999-12-31") && !path.endsWith("/removal")) {
                    wrong.add(said);
                }
                if (shop.wrote() && !shop.content().equals(kept)) {
                    wrong.add(said + " changed " + Keeping.changed(kept, shop.content()));
                }
                shop.restore();
                asked++;
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(asked).isGreaterThan(150);
    }
}
