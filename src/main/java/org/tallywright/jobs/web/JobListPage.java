package org.tallywright.jobs.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.tallywright.web.NavItem;
import org.tallywright.web.Tag;

/** The list of jobs as shown. */
record JobListPage(
        JobFilter filter,
        @Nullable String client,
        List<NavItem> states,
        List<Row> rows,
        int total,
        int pages,
        boolean showsHours,
        boolean opensJobs,
        boolean seesMoney,
        boolean noneYet) {

    /** @param hours logged of estimated; null where the reader sees none */
    record Row(
            String number,
            String title,
            String client,
            String stage,
            Tag state,
            String promised,
            boolean late,
            @Nullable String hours,
            boolean over) {}
}
