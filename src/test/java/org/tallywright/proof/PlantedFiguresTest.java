package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;

/**
 * Figures and phrases planted in the shop are absent from everything that those who must not know them can get: pages, files,
 * refused forms and error pages, bodies and headers. That the owner reads each of them shows that the search can see.
 */
@AppTest
class PlantedFiguresTest {
    @Autowired
    ApplicationContext context;

    @Autowired
    JdbcClient jdbc;

    @Test
    void nobodyReadsWhatIsNotForHim() throws Exception {
        WholeShop shop = new WholeShop(context);
        RouteValues values = new RouteValues(jdbc, shop);
        Set<String> leaks = new TreeSet<>();
        Set<String> faults = new TreeSet<>();
        Set<String> unread = new TreeSet<>();
        Set<Integer> statuses = new TreeSet<>();
        for (Reader reader : Reader.values()) {
            List<Crawl.Page> pages = new ArrayList<>(Crawl.of(shop, values, Routes.written(), reader));
            pages.addAll(refusals(shop, values, reader, pages));
            for (Planted planted : Planted.ALL) {
                boolean read = look(reader, planted, pages, leaks);
                if (reader == Reader.OWNER && planted.ownerReads() && !read) {
                    unread.add(planted.what());
                }
            }
            for (Crawl.Page page : pages) {
                statuses.add(page.answer().getStatus());
                faults.addAll(faults(reader, page));
            }
            System.out.println("Planted figures: " + reader.code() + " read " + pages.size() + " answers");
        }
        SoftAssertions.assertSoftly(softly -> {
            softly.assertThat(leaks).as("read by who must not").isEmpty();
            softly.assertThat(unread)
                    .as("planted, but the owner finds it nowhere")
                    .isEmpty();
            softly.assertThat(faults)
                    .as("pages that broke or show a missing text")
                    .isEmpty();
        });
        assertThat(statuses).contains(200, 302, 403, 404, 409, 422);
    }

    /** Whether it was found at all; what was found by who must not is a leak. */
    private static boolean look(Reader reader, Planted planted, List<Crawl.Page> pages, Set<String> leaks) {
        boolean read = false;
        for (Crawl.Page page : pages) {
            String all = page.all();
            Matcher found = planted.spellings().matcher(all);
            if (found.find()) {
                read = true;
                if (planted.hiddenFrom().contains(reader)) {
                    leaks.add(reader.code() + " reads " + planted.what() + " at " + page.address() + ": "
                            + all.substring(Math.max(0, found.start() - 60), Math.min(all.length(), found.end() + 40))
                                    .replaceAll("\\s+", " "));
                }
            }
        }
        return read;
    }

    /** Every form sent empty, as it is but of an earlier version, and as it is. */
    private static List<Crawl.Page> refusals(WholeShop shop, RouteValues values, Reader reader, List<Crawl.Page> pages)
            throws Exception {
        List<Crawl.Page> answers = new ArrayList<>();
        for (Route route : Routes.written()) {
            if (route.method().equals("POST") && !Crawl.secret(route, reader)) {
                for (String path : values.paths(route.pattern(), reader)) {
                    answers.add(Crawl.read("POST " + path + " (empty)", shop.ask(reader, post(URI.create(path)))));
                    shop.restore();
                }
            }
        }
        Set<String> sent = new TreeSet<>();
        for (Crawl.Page page : pages) {
            for (Form form : Form.of(page)) {
                if (form.action().equals("/sign-out") || !sent.add(form.action())) {
                    continue;
                }
                answers.add(Crawl.read("POST " + form.action(), shop.ask(reader, form.untouched())));
                shop.restore();
                if (form.fields().containsKey("version")) {
                    Map<String, String> stale =
                            Map.of("version", "77", "name", "Other", "title", "Other", "note", "Other");
                    answers.add(Crawl.read("POST " + form.action() + " (stale)", shop.ask(reader, form.with(stale))));
                    shop.restore();
                }
            }
        }
        return answers;
    }

    private static Set<String> faults(Reader reader, Crawl.Page page) {
        Set<String> faults = new TreeSet<>();
        if (page.answer().getStatus() >= 500) {
            faults.add(
                    reader.code() + " " + page.address() + ": " + page.answer().getHeader("X-Broken"));
        }
        if (page.body().matches("(?s).*\\?\\?[\\w.-]+\\?\\?.*")) {
            faults.add(reader.code() + " " + page.address() + " lacks a text: "
                    + page.body().replaceFirst("(?s).*(\\?\\?[\\w.-]+\\?\\?).*", "$1"));
        }
        return faults;
    }
}
