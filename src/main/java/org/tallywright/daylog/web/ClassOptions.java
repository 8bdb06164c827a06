package org.tallywright.daylog.web;

import java.util.HashMap;
import java.util.Map;
import org.tallywright.shared.HourClass;

/**
 * The options of an hour class box, ready made for each choice: every row of the day sheet holds one, and to build them
 * anew was the slowest part of the page. They hold fixed words of our own only.
 */
final class ClassOptions {
    private static final Map<String, String> BY_CHOICE = new HashMap<>();
    private static final String NONE_CHOSEN = html("");

    static {
        for (HourClass hourClass : HourClass.values()) {
            BY_CHOICE.put(hourClass.code(), html(hourClass.code()));
        }
    }

    private ClassOptions() {}

    static String of(String chosen) {
        return BY_CHOICE.getOrDefault(chosen, NONE_CHOSEN);
    }

    private static String html(String chosen) {
        StringBuilder html = new StringBuilder();
        for (HourClass hourClass : HourClass.values()) {
            html.append("<option value=\"")
                    .append(hourClass.code())
                    .append(hourClass.code().equals(chosen) ? "\" selected>" : "\">")
                    .append(hourClass.label())
                    .append("</option>");
        }
        return html.toString();
    }
}
