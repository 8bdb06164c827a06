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
public record Proposal(UUID taskKindId, Quantity quantity, Unit unit, boolean wholeJob, Basis basis) {
    /** Where a quantity comes from. */
    public enum Basis {
        /** The rules of thumb of the kind of piece. */
        RULE,
        /** The parts of the piece. */
        PARTS,
        /** Kinds counted as one of which some come from a rule and some from the parts. */
        BOTH
    }

    /** Two lines whose kinds are counted as one; what is once for the job and what is for the piece stay two lines. */
    Proposal and(Proposal other) {
        return new Proposal(
                taskKindId, quantity.plus(other.quantity), unit, wholeJob, basis == other.basis ? basis : Basis.BOTH);
    }

    /** What may be added up: the same kind, for the same whole. */
    record Key(UUID taskKindId, boolean wholeJob) {}

    Key key() {
        return new Key(taskKindId, wholeJob);
    }
}
