package org.tallywright.web.stick;

import org.tallywright.shared.Hours;

/**
 * Person-hours at completion: four times in five between {@code low} and {@code high}.
 *
 * @param jobs how many of the shop's own jobs stand behind it
 */
public record StickForecast(Hours low, Hours likely, Hours high, int jobs) {

    public StickForecast {
        if (low.isNegative() || low.compareTo(likely) > 0 || likely.compareTo(high) > 0) {
            throw new IllegalArgumentException("A forecast runs from low over likely to high");
        }
    }
}
