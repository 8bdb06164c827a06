package org.tallywright.proof;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jspecify.annotations.Nullable;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/**
 * A form as a page shows it, with what a browser would send when it is submitted untouched, and for a box with choices the
 * first that is not empty.
 */
record Form(String page, String action, Map<String, String> fields, Map<String, String> choices) {

    static List<Form> of(Crawl.Page page) {
        List<Form> forms = new ArrayList<>();
        if (page.html()) {
            Document document = page.document();
            for (Element form : document.select("form[method=post]")) {
                forms.add(read(page.address(), form));
            }
        }
        return forms;
    }

    private static Form read(String page, Element form) {
        Map<String, String> fields = new LinkedHashMap<>();
        Map<String, String> choices = new LinkedHashMap<>();
        for (Element box : form.select("input[name], textarea[name], select[name], button[name]")) {
            String name = box.attr("name");
            String kind = box.tagName().equals("input") ? box.attr("type") : box.tagName();
            String value = value(box, kind);
            String choice = choice(box, kind);
            if (choice != null) {
                choices.putIfAbsent(name, choice);
            }
            if (name.equals("_csrf") || value == null || kind.equals("button") && fields.containsKey(name)) {
                continue;
            }
            fields.put(name, value);
        }
        String action = form.attr("action").isEmpty() ? page : form.attr("action");
        return new Form(page, action, fields, choices);
    }

    private static @Nullable String choice(Element box, String kind) {
        Element option = box.selectFirst("option:not([value=''])");
        return option != null ? option.val() : kind.equals("radio") ? box.val() : null;
    }

    private static @Nullable String value(Element box, String kind) {
        return switch (kind) {
            case "textarea" -> box.wholeText();
            case "select" -> {
                Element chosen = box.selectFirst("option[selected]");
                Element first = chosen != null ? chosen : box.selectFirst("option");
                yield first == null ? "" : first.val();
            }
            case "checkbox", "radio" -> box.hasAttr("checked") ? box.val() : null;
            default -> box.val();
        };
    }

    MockHttpServletRequestBuilder untouched() {
        return with(Map.of());
    }

    MockHttpServletRequestBuilder with(Map<String, String> changed) {
        MockHttpServletRequestBuilder request = post(URI.create(action));
        Map<String, String> sent = new LinkedHashMap<>(fields);
        sent.putAll(changed);
        sent.forEach(request::param);
        return request;
    }

    MockHttpServletRequestBuilder without(String field) {
        MockHttpServletRequestBuilder request = post(URI.create(action));
        fields.forEach((name, value) -> {
            if (!name.equals(field)) {
                request.param(name, value);
            }
        });
        return request;
    }
}
