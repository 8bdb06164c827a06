package org.tallywright.daylog.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;

/**
 * The hours of a job.
 *
 * @param only what the list is narrowed to, in words; null for all
 * @param base address of this list without its order and page
 */
record JobHoursPage(
        String path,
        @Nullable String only,
        String base,
        String sort,
        int number,
        int pages,
        int entries,
        Hours total,
        List<Group> groups,
        List<Row> rows,
        boolean own) {

    /** This list in its order, for the pager. */
    public String paged() {
        return base + (base.contains("?") ? "&" : "?") + "sort=" + sort;
    }

    /** Sums of one kind: by task, class or person. */
    record Group(String key, List<Sum> sums) {}

    record Sum(String name, Hours hours, int entries, String href) {}

    record Row(
            UUID id,
            String date,
            String person,
            String task,
            String hourClass,
            Hours hours,
            String words,
            boolean memory,
            boolean correction) {}
}
