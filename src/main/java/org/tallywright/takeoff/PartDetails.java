package org.tallywright.takeoff;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Grain;
import org.tallywright.shared.Length;

/**
 * Parts that are alike.
 *
 * @param quantity in one piece
 * @param slot what the formulas call its material; empty for a part listed by hand
 * @param matched parts of one piece with the same word stay together on a sheet
 */
public record PartDetails(
        String name,
        int quantity,
        Length length,
        Length width,
        @Nullable UUID materialId,
        String slot,
        Grain grain,
        String matched,
        int longEdges,
        int shortEdges,
        int faces,
        int joints) {}
