package org.tallywright.estimates;

import org.tallywright.shared.Quantity;

/**
 * A purchase that a layout gave, whatever net and yield would make of it.
 *
 * @param likely charged half the time at most, above nothing
 * @param safe charged four times in five at most; the same where the layout leaves nothing to chance
 * @param covered of the whole need, what agreed lines and offcuts give: likely and safe are what is needed beyond it
 */
public record LaidOut(Quantity likely, Quantity safe, Quantity covered) {
    public LaidOut {
        safe = safe.compareTo(likely) < 0 ? likely : safe;
    }
}
