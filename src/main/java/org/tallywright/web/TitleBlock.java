package org.tallywright.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The block that heads a job's pages as it would a shop drawing.
 *
 * @param number as in 26-014
 * @param place client and site in one line
 * @param cells figures the reader's role may see, in order; five or six look best
 */
public record TitleBlock(String number, String title, String place, List<Cell> cells, List<Tag> tags) {

    public TitleBlock {
        cells = List.copyOf(cells);
        tags = List.copyOf(tags);
    }

    /** A named value; {@code href} leads to the entries behind it. */
    public record Cell(String name, String value, @Nullable String href) {

        public Cell(String name, String value) {
            this(name, value, null);
        }
    }
}
