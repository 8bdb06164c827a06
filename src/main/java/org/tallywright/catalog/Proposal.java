package org.tallywright.catalog;

import java.util.UUID;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;

/**
 * A task that a kind of piece proposes for a piece of given sizes.
 *
 * @param unit the unit of the quantity, that of the task kind
 * @param wholeJob once for the job, not for this piece: leave it out where the job has such a task already
 */
public record Proposal(UUID taskKindId, Quantity quantity, Unit unit, boolean wholeJob) {
    /** Two lines whose kinds are counted as one. */
    Proposal and(Proposal other) {
        return new Proposal(taskKindId, quantity.plus(other.quantity), unit, wholeJob && other.wholeJob);
    }
}
