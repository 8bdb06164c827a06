package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitHours;

/**
 * What is planned for a task. Its unit and starting hours per unit come from its task kind.
 *
 * @param name empty for the name of the task kind
 * @param pieceId null for a task of the whole job
 * @param stageId null for the stage of the task kind
 * @param unitHours null for the starting hours per unit of the task kind
 */
public record TaskDetails(
        UUID taskKindId,
        @Nullable UUID pieceId,
        @Nullable UUID stageId,
        String name,
        Quantity quantity,
        @Nullable UnitHours unitHours,
        @Nullable LocalDate plannedOn,
        @Nullable UUID assignedTo) {

    /** A task as its kind proposes it: nobody's yet, on no day. */
    public static TaskDetails proposed(UUID taskKindId, @Nullable UUID pieceId, Quantity quantity) {
        return new TaskDetails(taskKindId, pieceId, null, "", quantity, null, null, null);
    }

    TaskDetails ofKind(UUID other) {
        return new TaskDetails(other, pieceId, stageId, name, quantity, unitHours, plannedOn, assignedTo);
    }

    TaskDetails filledFrom(KindFacts.Kind kind) {
        return new TaskDetails(
                taskKindId,
                pieceId,
                stageId == null ? kind.stageId() : stageId,
                name.isEmpty() ? kind.name() : name,
                quantity,
                unitHours == null ? kind.unitHours() : unitHours,
                plannedOn,
                assignedTo);
    }
}
