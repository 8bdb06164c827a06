package org.tallywright.past.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.web.NavItem;

/**
 * Past pieces as shown.
 *
 * @param job number of the job that is being estimated; null where somebody only looks
 * @param ranges what pieces of the picked kind took; empty where none is picked
 * @param money whether what material cost is shown
 * @param noneYet nothing was built, whatever is looked for
 */
record BuiltPage(
        BuiltForm form,
        @Nullable String job,
        List<NavItem> tabs,
        Map<String, String> kinds,
        String lengthUnit,
        List<Figure> ranges,
        List<Row> rows,
        int found,
        int number,
        int pages,
        String path,
        boolean money,
        boolean noneYet) {

    /** @param note the range, and how many stand behind it */
    record Figure(String name, String value, String note) {}

    /**
     * @param per hours for one unit of the kind's measure, or empty
     * @param beside rework and the like, or empty
     * @param material what its material cost; empty where that is not known, or the reader sees no money
     * @param review the page of its review, or null
     */
    record Row(
            UUID id,
            String name,
            String kind,
            String sizes,
            String number,
            String client,
            String finished,
            String took,
            String estimated,
            String per,
            String beside,
            String material,
            @Nullable String review) {}

    /** A job that can be copied as a whole. */
    record JobRow(String number, String title, String client, String state, int pieces, String hours) {}
}
