package org.tallywright.jobs.web;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.UriComponentsBuilder;
import org.tallywright.jobs.JobState;

/**
 * Which jobs the list shows and in which order, as its address says; anything it does not know is taken as not said.
 *
 * @param state a state's code or "all"
 * @param sort a column's key, with a minus for falling
 * @param page from 1
 */
record JobFilter(String state, @Nullable UUID client, String q, String sort, int page) {
    static final String ALL = "all";
    private static final Map<String, String> COLUMNS = Map.of(
            "number", "j.year %1$s, j.sequence %1$s",
            "title", "lower(j.title) %1$s, j.year desc, j.sequence desc",
            "client", "lower(c.name) %1$s, j.year desc, j.sequence desc",
            "promised", "j.promised_on %1$s nulls last, j.year desc, j.sequence desc");

    static JobFilter of(
            @Nullable String state,
            @Nullable String client,
            String words,
            @Nullable String sort,
            @Nullable String page) {
        String order = sort == null || column(sort) == null ? "-number" : sort;
        return new JobFilter(known(state), id(client), words, order, pageOf(page));
    }

    private static String known(@Nullable String state) {
        String said = state == null ? "" : state;
        return said.equals(ALL) || JobState.of(said).isPresent() ? said : JobState.RUNNING.code();
    }

    private static @Nullable UUID id(@Nullable String typed) {
        try {
            return typed == null || typed.isBlank() ? null : UUID.fromString(typed.strip());
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    private static int pageOf(@Nullable String typed) {
        return typed != null && typed.matches("[1-9]\\d{0,5}") ? Integer.parseInt(typed) : 1;
    }

    private static @Nullable String column(@Nullable String sort) {
        return sort == null ? null : COLUMNS.get(sort.startsWith("-") ? sort.substring(1) : sort);
    }

    /** From the list of known columns only, never from what was typed. */
    String orderBy() {
        return Optional.ofNullable(column(sort)).orElseThrow().formatted(sort.startsWith("-") ? "desc" : "asc");
    }

    /** The parameter for a substring search; the signs that mean something there mean themselves. */
    String like() {
        String lower = q.toLowerCase(Locale.ROOT);
        return "%" + lower.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_") + "%";
    }

    /** The list's address with another state, everything else as it is but the page. */
    String withState(String other) {
        return address(other, sort);
    }

    /** For the pager: all but the page. */
    public String path() {
        return address(state, sort);
    }

    /** For the headings: all but order and page. */
    public String unsorted() {
        return address(state, null);
    }

    private String address(String ofState, @Nullable String order) {
        UriComponentsBuilder uri = UriComponentsBuilder.fromPath("/jobs").queryParam("state", ofState);
        if (client != null) {
            uri.queryParam("client", client);
        }
        if (!q.isEmpty()) {
            uri.queryParam("q", "{q}");
        }
        if (order != null) {
            uri.queryParam("sort", order);
        }
        return uri.encode().buildAndExpand(Map.of("q", q)).toUriString();
    }
}
