package org.tallywright.daylog.web;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.shared.Ids;

/** A day sheet's form as a browser would send it: taken from a page, or built row by row. */
class SheetForm {
    private final Map<String, String> fields = new LinkedHashMap<>();
    private final java.util.List<String> yes = new java.util.ArrayList<>();
    private int rows;

    static SheetForm of(String html) {
        Document page = Jsoup.parse(html);
        SheetForm form = new SheetForm();
        for (Element box : page.select("form.day input[name], form.day select[name]")) {
            String name = box.attr("name");
            if (name.equals("yes")) {
                form.yes.add(box.val());
                continue;
            }
            Element chosen = box.selectFirst("option[selected]");
            form.fields.put(name, box.tagName().equals("select") ? (chosen == null ? "" : chosen.val()) : box.val());
            if (name.startsWith("row.") && name.endsWith(".id")) form.rows++;
        }
        return form;
    }

    /** A new row; returns its id. */
    UUID row(String what, String hourClass, String time) {
        UUID id = Ids.next();
        row(id, "", what, hourClass, time);
        return id;
    }

    SheetForm row(UUID id, String version, String what, String hourClass, String time) {
        String row = "row." + rows++ + ".";
        fields.put(row + "id", id.toString());
        fields.put(row + "version", version);
        fields.put(row + "what", what);
        fields.put(row + "class", hourClass);
        fields.put(row + "time", time);
        return this;
    }

    /** The place of the row that was added last: {@code row.3}. */
    String last() {
        return "row." + (rows - 1);
    }

    /** Types into a box of the row whose target that is. */
    SheetForm type(UUID task, String field, String text) {
        String row = fields.entrySet().stream()
                .filter(e -> e.getKey().endsWith(".what") && e.getValue().equals("task:" + task))
                .map(e -> e.getKey().substring(0, e.getKey().length() - "what".length()))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row for " + task + " in " + fields));
        fields.put(row + field, text);
        return this;
    }

    SheetForm set(String name, String value) {
        fields.put(name, value);
        return this;
    }

    SheetForm yes(String key) {
        yes.add(key);
        return this;
    }

    String field(String name) {
        return fields.getOrDefault(name, "");
    }

    MockHttpServletRequestBuilder sentTo(String address) {
        MockHttpServletRequestBuilder request = post(address).with(csrf());
        fields.forEach(request::param);
        yes.forEach(key -> request.param("yes", key));
        return request;
    }
}
