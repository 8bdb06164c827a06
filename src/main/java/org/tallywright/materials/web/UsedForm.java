package org.tallywright.materials.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;
import org.tallywright.shared.Refused;

/**
 * Material used, as the browser sent it: a line as typed, and rows that a line became.
 *
 * @param act the button: read or save
 */
record UsedForm(String line, String job, String on, String source, String act, List<Row> rows) {
    private static final int MOST = 60;
    private static final Pattern FIELD = Pattern.compile("row\\.(\\d{1,3})\\.(id|material|quantity|typed)");

    UsedForm {
        rows = List.copyOf(rows);
    }

    /**
     * One material.
     *
     * @param id that the page made for it
     * @param material the id of what is chosen, or empty
     * @param typed the part of the line it came from
     */
    record Row(UUID id, String material, String quantity, String typed) {
        boolean left() {
            return quantity.isBlank();
        }
    }

    static UsedForm blank(String job, String on) {
        return new UsedForm("", job, on, "job", "", List.of());
    }

    /** @throws Refused where hidden parts of the page came back damaged, or too much came at once */
    static UsedForm read(MultiValueMap<String, String> sent) {
        Map<Integer, Map<String, String>> rows = new TreeMap<>();
        sent.forEach((name, values) -> {
            Matcher field = FIELD.matcher(name);
            if (field.matches() && !values.isEmpty()) {
                rows.computeIfAbsent(Integer.valueOf(field.group(1)), n -> new HashMap<>())
                        .put(field.group(2), text(values.get(0)));
            }
        });
        if (rows.size() > MOST) {
            throw new Refused("That is too much for one page; it has room for " + MOST + " materials.");
        }
        List<Row> read = new ArrayList<>();
        rows.values()
                .forEach(row -> read.add(new Row(
                        id(row.get("id")),
                        row.getOrDefault("material", ""),
                        row.getOrDefault("quantity", ""),
                        row.getOrDefault("typed", ""))));
        return new UsedForm(
                text(sent.getFirst("line")),
                text(sent.getFirst("job")),
                text(sent.getFirst("on")),
                text(sent.getFirst("source")),
                text(sent.getFirst("act")),
                read);
    }

    private static UUID id(@Nullable String text) {
        try {
            if (text != null && text.length() == 36) {
                return UUID.fromString(text);
            }
        } catch (IllegalArgumentException e) {
            // Said below.
        }
        throw new Refused("A hidden part of this page came back damaged. Open it afresh.");
    }

    private static String text(@Nullable String sent) {
        return sent == null ? "" : sent;
    }

    UsedForm with(String newLine, List<Row> newRows) {
        return new UsedForm(newLine, job, on, source, act, newRows);
    }

    /** As the form of one use. */
    MovementForm use(Row row) {
        return new MovementForm(
                row.id(), null, job, row.material(), row.quantity(), "", "", "", "", "", source, "", "", on, "", "");
    }
}
