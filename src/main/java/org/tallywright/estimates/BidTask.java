package org.tallywright.estimates;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/**
 * A task as it was bid.
 *
 * @param pieceName empty for a task of the whole job
 * @param startingUnitHours the catalogue's rate when the task was made; learning is against this one
 * @param unitHours the rate that was bid
 */
@Embeddable
public record BidTask(
        UUID jobId,
        @Nullable UUID taskId,
        String pieceName,
        String stageName,
        String name,
        Quantity quantity,
        Unit unit,
        UnitHours startingUnitHours,
        UnitHours unitHours,
        @Column(name = "estimated_minutes") Hours hours) {}
