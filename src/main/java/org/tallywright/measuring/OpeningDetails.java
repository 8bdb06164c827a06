package org.tallywright.measuring;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/**
 * What was measured of one opening.
 *
 * @param pieceId null where no piece is meant yet
 * @param goodTo plus or minus of one reading, about 19 times in 20
 */
public record OpeningDetails(
        @Nullable UUID pieceId,
        String place,
        Length goodTo,
        LocalDate measuredOn,
        String note,
        Map<Reading, Length> readings,
        List<Mark> marks) {
    public OpeningDetails {
        readings = Map.copyOf(readings);
        marks = List.copyOf(marks);
    }
}
