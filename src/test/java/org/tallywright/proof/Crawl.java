package org.tallywright.proof;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.springframework.mock.web.MockHttpServletResponse;
import org.tallywright.estimates.print.Pdf;

/** All pages and files that a reader reaches: each route with its variables filled, then every link on what came back. */
final class Crawl {
    /** Of pages that differ in ids, numbers and dates only. */
    private static final int ALIKE = 2;

    private final WholeShop shop;
    private final Reader reader;
    private final Deque<String> ahead = new ArrayDeque<>();
    private final Map<String, Integer> seen = new HashMap<>();
    private final List<Page> pages = new ArrayList<>();

    /** What came back from one address. */
    record Page(String address, MockHttpServletResponse answer, String body) {
        boolean html() {
            return String.valueOf(answer.getContentType()).startsWith("text/html");
        }

        Document document() {
            return Jsoup.parse(body);
        }

        /** Body and headers, without what is random or of the build. */
        String all() {
            StringBuilder all = new StringBuilder();
            for (String header : answer.getHeaderNames()) {
                if (!header.equals("Content-Length")) {
                    all.append(header)
                            .append(": ")
                            .append(answer.getHeaders(header))
                            .append('\n');
                }
            }
            return plain(all + body);
        }
    }

    private Crawl(WholeShop shop, Reader reader) {
        this.shop = shop;
        this.reader = reader;
    }

    static List<Page> of(WholeShop shop, RouteValues values, List<Route> routes, Reader reader) {
        Crawl crawl = new Crawl(shop, reader);
        for (Route route : routes) {
            if (route.method().equals("GET") && !secret(route, reader)) {
                crawl.ahead.addAll(values.paths(route.pattern(), reader));
            }
        }
        crawl.ahead.addAll(List.of("/jobs/99-999", "/no-such-page", "/jobs/%00", "/materials/purchases?page=x"));
        crawl.walk();
        return crawl.pages;
    }

    /** Addresses that are a secret themselves: of the crew only the owner, who made them, has them. */
    static boolean secret(Route route, Reader reader) {
        return route.pattern().contains("{token}") && reader != Reader.OWNER && reader != Reader.STRANGER;
    }

    private void walk() {
        while (!ahead.isEmpty()) {
            String address = ahead.poll();
            if (seen.merge(likeness(address), 1, Integer::sum) > ALIKE || seen.put("at " + address, 1) != null) {
                continue;
            }
            Page page = read(address, shop.ask(reader, get(URI.create(address))));
            pages.add(page);
            shop.restore();
            if (page.html()) {
                for (Element link : page.document().select("a[href^=/], form[method=get][action^=/]")) {
                    ahead.add(link.hasAttr("href") ? link.attr("href").replaceFirst("#.*", "") : link.attr("action"));
                }
            }
        }
    }

    static Page read(String address, MockHttpServletResponse answer) {
        byte[] bytes = answer.getContentAsByteArray();
        String plain = new String(bytes, java.nio.charset.StandardCharsets.UTF_8);
        return new Page(address, answer, plain.startsWith("%PDF") ? plain + new Pdf(bytes).text() : plain);
    }

    /** The address with ids, numbers and dates taken out, and only the names of its parameters. */
    private static String likeness(String address) {
        String[] parts = address.split("\\?", 2);
        String path = parts[0].replaceAll("[0-9a-f-]{36}|\\d{4}-\\d\\d-\\d\\d|\\d\\d-\\d{3,4}", "*");
        TreeSet<String> names = new TreeSet<>();
        if (parts.length > 1) {
            for (String pair : parts[1].split("&")) {
                names.add(pair.replaceFirst("=.*", ""));
            }
        }
        return path + names;
    }

    private static String plain(String body) {
        return body.replaceAll("name=\"_csrf\" value=\"[^\"]*\"", "")
                .replaceAll("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}", "")
                .replaceAll("-[0-9a-f]{32}\\.(css|js|svg|png)", "")
                .replaceAll("(?s)<svg class=\"mark\".*?</svg>", "");
    }
}
