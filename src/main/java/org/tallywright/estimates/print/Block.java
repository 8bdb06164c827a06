package org.tallywright.estimates.print;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * What stands on one stretch of a page and is never cut. Points, 72 to the inch.
 *
 * @param gap above it, left out at the top of a page
 * @param keep whether the next one must follow on the same page
 * @param again drawn once more where a page begins with this one: the head of its table
 */
record Block(
        float gap,
        float height,
        boolean keep,
        Pen pen,
        @Nullable Block again) {
    /** Draws below a line, given as the height above the page's lower edge. */
    interface Pen {
        void draw(Canvas canvas, float top) throws IOException;
    }
}
