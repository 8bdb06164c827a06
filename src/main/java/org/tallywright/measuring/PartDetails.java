package org.tallywright.measuring;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/**
 * A part of solid wood.
 *
 * @param width across the grain
 * @param moisture when it is made, in percent of the dry weight, to a tenth
 */
public record PartDetails(
        @Nullable UUID pieceId, String name, Species species, Cut cut, Length width, BigDecimal moisture, String note) {
    public PartDetails {
        moisture = moisture.setScale(1, RoundingMode.HALF_UP);
    }

    /** In inches, when the part goes from the moisture it was made at to that of the room. */
    public Reckoned movement(Reckoned room) {
        Reckoned made = new Reckoned(moisture.doubleValue(), WoodMovement.METER_GOOD_TO_PERCENT / 2);
        return WoodMovement.across(width.inches().doubleValue(), species, cut, made, room);
    }
}
