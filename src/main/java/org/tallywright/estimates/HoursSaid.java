package org.tallywright.estimates;

import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;

/**
 * What the shop's own past says of an estimate's hours. Hours only: a lead may see it.
 *
 * @param lines by task
 * @param total of all of them with the hours no line names; never the sum of the lines
 * @param jobs finished jobs behind it
 * @param startingPercent how much of it is still the starting rates
 * @param confidence 50, 80 or 90 where the price is made at that; null for the named percentage
 */
public record HoursSaid(
        Map<UUID, Line> lines,
        Total total,
        int jobs,
        int startingPercent,
        @Nullable Integer confidence) {

    /** The same with the price made at another confidence. */
    HoursSaid pricedAt(@Nullable Integer other) {
        return new HoursSaid(lines, total, jobs, startingPercent, other);
    }

    /** Likely hours, and the range that holds four times in five. */
    public record Line(Hours likely, Hours low, Hours high, int tasks, int jobs) {}

    /** @param p80 hours that are stayed under four times in five; another thing than the range from low to high */
    public record Total(Hours likely, Hours low, Hours high, Hours p80, Hours p90, Hours mean) {}
}
