package org.tallywright.daylog.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.util.MultiValueMap;
import org.tallywright.daylog.ClockDesk;

/**
 * What the day sheet's form says about the clock, as the browser sent it.
 *
 * @param id that the page made for the next run
 * @param seen the run that the page showed as running
 * @param ended boxes "when did you stop", by run, as typed
 * @param takes offers that were put into rows of this page and are not saved yet
 */
record ClockForm(
        @Nullable UUID id,
        @Nullable UUID seen,
        Map<UUID, String> ended,
        List<ClockDesk.Take> takes,
        @Nullable String problem) {
    static final ClockForm NONE = new ClockForm(null, null, Map.of(), List.of(), null);
    private static final String ENDED = "ended.";

    ClockForm {
        ended = Map.copyOf(ended);
        takes = List.copyOf(takes);
    }

    static ClockForm read(MultiValueMap<String, String> sent) {
        Map<UUID, String> ended = new HashMap<>();
        sent.forEach((name, values) -> {
            UUID run = name.startsWith(ENDED) ? id(name.substring(ENDED.length())) : null;
            if (run != null
                    && !values.isEmpty()
                    && values.get(0) != null
                    && !values.get(0).isBlank()) {
                ended.put(run, values.get(0));
            }
        });
        List<ClockDesk.Take> takes = new ArrayList<>();
        sent.getOrDefault("take", List.of()).stream().limit(60).forEach(code -> {
            ClockDesk.Take take = take(code);
            if (take != null) {
                takes.add(take);
            }
        });
        return new ClockForm(id(sent.getFirst("clock.id")), id(sent.getFirst("clock.seen")), ended, takes, null);
    }

    static @Nullable UUID id(@Nullable String text) {
        try {
            return text != null && text.length() == 36 ? UUID.fromString(text) : null;
        } catch (IllegalArgumentException e) {
            return null; // The act that needs it says so.
        }
    }

    /** As a form carries it: the row's id, a run of the offer and its minutes. */
    static String code(ClockDesk.Take take) {
        return take.entry() + ":" + take.run() + ":" + take.minutes();
    }

    static ClockDesk.@Nullable Take take(@Nullable String code) {
        String[] parts = code == null ? new String[0] : code.split(":", -1);
        UUID entry = parts.length == 3 ? id(parts[0]) : null;
        UUID run = parts.length == 3 ? id(parts[1]) : null;
        return entry == null || run == null || !parts[2].matches("\\d{1,4}")
                ? null
                : new ClockDesk.Take(entry, run, Integer.parseInt(parts[2]));
    }

    ClockForm with(ClockDesk.Take take) {
        List<ClockDesk.Take> all = new ArrayList<>(takes);
        if (!all.contains(take)) {
            all.add(take);
        }
        return new ClockForm(id, seen, ended, all, problem);
    }

    ClockForm refused(String sentence) {
        return new ClockForm(id, seen, ended, takes, sentence);
    }

    ClockForm withoutTakes() {
        return new ClockForm(id, seen, ended, List.of(), problem);
    }

    ClockForm without(UUID run) {
        Map<UUID, String> left = new HashMap<>(ended);
        left.remove(run);
        return new ClockForm(id, seen, left, takes, problem);
    }
}
