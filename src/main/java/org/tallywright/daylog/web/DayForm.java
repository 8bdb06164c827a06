package org.tallywright.daylog.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;
import org.tallywright.shared.Refused;

/**
 * A day sheet as the browser sent it. Read by hand, because no field of it may be able to break the page: boxes are named
 * {@code row.3.time}, and whatever else comes along is left aside.
 *
 * @param line the whole day in one line, as typed
 * @param yes keys of the questions that were ticked
 * @param act the button: save, read, add, one of an offer, or one of the clock
 */
record DayForm(List<RowForm> rows, String line, Set<String> yes, String act, ClockForm clock) {
    static final int MOST_ROWS = 60;
    private static final int LONGEST_HIDDEN = 4000;
    private static final Set<String> TYPED = Set.of("time", "note", "reason");
    private static final Pattern FIELD =
            Pattern.compile("row\\.(\\d{1,3})\\.(id|version|what|class|time|note|reason|pick)");

    DayForm {
        rows = List.copyOf(rows);
        yes = Set.copyOf(yes);
    }

    /** @throws Refused where hidden parts of the page came back damaged, or too much came at once */
    static DayForm read(MultiValueMap<String, String> sent) {
        Map<Integer, Map<String, String>> rows = new TreeMap<>();
        sent.forEach((name, values) -> {
            Matcher field = FIELD.matcher(name);
            if (field.matches() && !values.isEmpty()) {
                rows.computeIfAbsent(Integer.valueOf(field.group(1)), n -> new HashMap<>())
                        .put(field.group(2), value(field.group(2), values.get(0)));
            }
        });
        if (rows.size() > MOST_ROWS) {
            throw new Refused("That is too much for one page; a day has room for " + MOST_ROWS + " rows.");
        }
        List<RowForm> read = new ArrayList<>();
        rows.values().forEach(row -> read.add(row(row)));
        List<String> yes = sent.getOrDefault("yes", List.of());
        return new DayForm(
                read,
                typed(sent.getFirst("line")),
                new LinkedHashSet<>(yes.stream().map(DayForm::hidden).limit(200).toList()),
                hidden(sent.getFirst("act")),
                ClockForm.read(sent));
    }

    private static RowForm row(Map<String, String> row) {
        return new RowForm(
                id(row.getOrDefault("id", "")),
                version(row.getOrDefault("version", "")),
                row.getOrDefault("what", ""),
                row.getOrDefault("class", "direct"),
                row.getOrDefault("time", ""),
                row.getOrDefault("note", ""),
                row.getOrDefault("reason", ""),
                row.containsKey("pick"));
    }

    private static UUID id(String text) {
        try {
            if (text.length() == 36) {
                return UUID.fromString(text);
            }
        } catch (IllegalArgumentException e) {
            // Said below.
        }
        throw damaged();
    }

    private static @Nullable Integer version(String text) {
        if (text.isEmpty()) {
            return null;
        }
        if (!text.matches("\\d{1,9}")) {
            throw damaged();
        }
        return Integer.valueOf(text);
    }

    private static Refused damaged() {
        return new Refused("A hidden part of this page came back damaged. Open the day afresh.");
    }

    private static String value(String field, @Nullable String sent) {
        return TYPED.contains(field) ? typed(sent) : hidden(sent);
    }

    /** What a person typed is kept at any length: a box that holds too much is refused beside it, not with the page. */
    private static String typed(@Nullable String sent) {
        return sent == null ? "" : sent;
    }

    private static String hidden(@Nullable String sent) {
        String value = typed(sent);
        if (value.length() > LONGEST_HIDDEN) {
            throw damaged();
        }
        return value;
    }

    DayForm withRows(List<RowForm> newRows) {
        return new DayForm(newRows, line, yes, act, clock);
    }

    DayForm withLine(String newLine) {
        return new DayForm(rows, newLine, yes, act, clock);
    }

    DayForm withClock(ClockForm newClock) {
        return new DayForm(rows, line, yes, act, newClock);
    }

    DayForm withAct(String newAct) {
        return new DayForm(rows, line, yes, newAct, clock);
    }
}
