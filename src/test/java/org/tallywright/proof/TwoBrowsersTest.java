package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.tallywright.AppTest;

/** Two browsers on one form, and one form sent twice: nothing is overwritten unseen, nothing is doubled. */
@AppTest
class TwoBrowsersTest {
    /** Boxes that take words, the first that a form has is changed. */
    private static final List<String> WORDS =
            List.of("note", "text", "name", "title", "description", "address", "caption");

    private static final String FIRST = "Rubbed down by hand";
    private static final String SECOND = "Left as it came";

    @Autowired
    ApplicationContext context;

    @Autowired
    RequestMappingHandlerMapping requestMappingHandlerMapping;

    @Autowired
    JdbcClient jdbc;

    @Test
    void theSecondOfTwoEditsIsShownBothVersions() throws Exception {
        WholeShop shop = new WholeShop(context);
        List<String> wrong = new ArrayList<>();
        Set<String> proven = new TreeSet<>();
        forms(shop).forEach((route, form) -> {
            String box = WORDS.stream()
                    .filter(form.fields()::containsKey)
                    .findFirst()
                    .orElse(null);
            if (box == null || form.fields().getOrDefault("version", "").isEmpty()) {
                return;
            }
            MockHttpServletResponse first = shop.ask(Reader.OWNER, form.with(Map.of(box, FIRST)));
            if (first.getStatus() / 100 == 3) {
                Map<String, String> kept = shop.content();
                MockHttpServletResponse second = shop.ask(Reader.OWNER, form.with(Map.of(box, SECOND)));
                String body = Crawl.read(route, second).body();
                if (second.getStatus() != 409 || !body.contains(FIRST) || !body.contains(SECOND)) {
                    wrong.add(
                            route + ": " + second.getStatus() + (body.contains(FIRST) ? "" : ", kept version not shown")
                                    + (body.contains(SECOND) ? "" : ", typed version not shown"));
                } else if (!shop.content().equals(kept)) {
                    wrong.add(route + ": something was written all the same");
                }
                proven.add(route);
            } else {
                wrong.add(route + ": the first edit was answered with " + first.getStatus() + " "
                        + Crawl.read(route, first).document().select(".error").eachText());
            }
            shop.restore();
        });
        System.out.println("Two browsers: " + proven.size() + " forms that edit " + proven);
        assertThat(wrong).isEmpty();
        assertThat(proven)
                .contains(
                        "/jobs/{number}/tasks/{id}",
                        "/jobs/{number}/pieces/{id}",
                        "/jobs/{number}",
                        "/clients/{id}",
                        "/jobs/{number}/photos/{id}",
                        "/entries/{id}");
    }

    @Test
    void aFormSentTwiceMakesOneRow() throws Exception {
        WholeShop shop = new WholeShop(context);
        List<String> wrong = new ArrayList<>();
        Set<String> proven = new TreeSet<>();
        forms(shop).forEach((route, form) -> {
            // The preview of an import saves nothing without a file.
            if (!form.fields().containsKey("id")
                    || !form.fields().getOrDefault("version", "").isEmpty()
                    || route.startsWith("/rates/import")) {
                return;
            }
            Map<String, String> filled = filled(form);
            if (route.startsWith("/materials/")) {
                filled.put("job", String.valueOf(shop.one("select number from job where id = ?", shop.job())));
                filled.put(
                        "material",
                        String.valueOf(shop.one("select material_id from purchase where unit_price = 17.93")));
            } else if (route.equals("/jobs")) {
                filled.put("site", "");
            }
            Map<String, String> before = shop.content();
            MockHttpServletResponse first = shop.ask(Reader.OWNER, form.with(filled));
            Map<String, String> once = shop.content();
            MockHttpServletResponse second = shop.ask(Reader.OWNER, form.with(filled));
            if (first.getStatus() / 100 != 3 || once.equals(before)) {
                wrong.add(route + ": answered with " + first.getStatus() + " "
                        + Crawl.read(route, first).document().select(".error").eachText());
            } else if (second.getStatus() / 100 != 3 || !shop.content().equals(once)) {
                wrong.add(route + ": the repeat was answered with " + second.getStatus() + " and changed "
                        + Keeping.changed(once, shop.content()));
            } else {
                proven.add(route);
            }
            shop.restore();
        });
        System.out.println("Sent twice: " + proven.size() + " forms that create " + proven);
        assertThat(wrong).isEmpty();
        assertThat(proven).hasSizeGreaterThan(8);
    }

    /** One form for each route and kind, the fullest. */
    private Map<String, Form> forms(WholeShop shop) throws Exception {
        Map<String, Form> forms = new TreeMap<>();
        for (Crawl.Page page : Crawl.of(shop, new RouteValues(jdbc, shop), Routes.written(), Reader.OWNER)) {
            for (Form form : Form.of(page)) {
                String path = form.action().replaceFirst("\\?.*", "");
                String route = Routes.serving(requestMappingHandlerMapping, RequestMethod.POST, path);
                if (!route.isEmpty()) {
                    String key = route.contains("{kind:") ? path.replaceAll("[0-9a-f-]{36}", "{id}") : route;
                    forms.merge(
                            key, form, (a, b) -> b.fields().size() > a.fields().size() ? b : a);
                }
            }
        }
        return forms;
    }

    private static Map<String, String> filled(Form form) {
        Map<String, String> filled = new LinkedHashMap<>();
        form.fields().forEach((name, value) -> {
            String choice = form.choices().get(name);
            if (value.isEmpty() && choice != null) {
                filled.put(name, choice);
            } else if (value.isEmpty()) {
                String sample = sample(name);
                if (sample != null) {
                    filled.put(name, sample);
                }
            }
        });
        form.choices().forEach((name, choice) -> {
            if (!form.fields().containsKey(name)) {
                filled.put(name, choice);
            }
        });
        return filled;
    }

    private static @Nullable String sample(String box) {
        Map<String, String> known = new HashMap<>();
        for (String words : List.of(
                "name",
                "clientName",
                "title",
                "text",
                "description",
                "address",
                "label",
                "code",
                "size",
                "what",
                "reason",
                "place",
                "location")) {
            known.put(words, words.equals("code") ? "sample_code" : "A sample");
        }
        for (String figure : List.of(
                "quantity",
                "price",
                "credit",
                "amount",
                "factor",
                "unitHours",
                "wage",
                "burden",
                "net",
                "days",
                "minutes",
                "yield",
                "temperature",
                "humidity",
                "moisture",
                "step")) {
            known.put(figure, figure.equals("yield") ? "0.9" : "2");
        }
        for (String length : List.of("length", "width", "height", "depth")) {
            known.put(length, "12");
        }
        for (String day : List.of("on", "from", "fromDate", "onDate", "measuredOn", "takenOn", "date")) {
            known.put(day, "2026-11-24");
        }
        return known.get(box);
    }
}
