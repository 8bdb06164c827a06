package org.tallywright.jobs.web;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.TaskDetails;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.UnitHours;
import org.tallywright.web.FormReader;

/**
 * A task as typed.
 *
 * @param unitHours empty for the starting hours per unit of the task kind
 */
record TaskForm(
        @Nullable UUID id,
        @Nullable Integer version,
        String taskKind,
        String piece,
        String stage,
        String name,
        String quantity,
        String unitHours,
        String plannedOn,
        String assignedTo) {
    private static final UnitHours MOST = UnitHours.of("1000");

    TaskForm {
        taskKind = Texts.of(taskKind);
        piece = Texts.of(piece);
        stage = Texts.of(stage);
        name = Texts.of(name);
        quantity = Texts.of(quantity);
        unitHours = Texts.of(unitHours);
        plannedOn = Texts.of(plannedOn);
        assignedTo = Texts.of(assignedTo);
    }

    static TaskForm blank(String piece) {
        return new TaskForm(Ids.next(), null, "", piece, "", "", "", "", "", "");
    }

    static TaskForm of(UUID id, int version, TaskDetails kept) {
        UnitHours rate = kept.unitHours();
        return new TaskForm(
                id,
                version,
                kept.taskKindId().toString(),
                text(kept.pieceId()),
                text(kept.stageId()),
                kept.name(),
                kept.quantity().toString(),
                rate == null ? "" : rate.toString(),
                text(kept.plannedOn()),
                text(kept.assignedTo()));
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : value.toString();
    }

    @Nullable
    TaskDetails read(FormReader read) {
        UUID kindId = read.field("taskKind", () -> Reader.id(taskKind, "Pick a task kind."));
        UUID pieceId = read.optional("piece", piece, () -> Reader.id(piece, "Pick a piece of this job."));
        UUID stageId = read.optional("stage", stage, () -> Reader.id(stage, "Pick a stage."));
        String words = read.field("name", () -> Typed.line(name, 120));
        Quantity much = read.field("quantity", () -> Quantity.of(quantity));
        UnitHours rate = read.optional("unitHours", unitHours, () -> rate(unitHours));
        LocalDate on = read.optional("plannedOn", plannedOn, () -> Reader.day(plannedOn));
        UUID person = read.optional("assignedTo", assignedTo, () -> Reader.id(assignedTo, "Pick somebody."));
        return read.refused() || kindId == null || words == null || much == null
                ? null
                : new TaskDetails(kindId, pieceId, stageId, words, much, rate, on, person);
    }

    private static UnitHours rate(String typed) {
        UnitHours rate = UnitHours.of(typed);
        if (rate.compareTo(UnitHours.ZERO) <= 0 || rate.compareTo(MOST) > 0) {
            throw new NotUnderstood("Hours per unit are above nothing and at most 1000.");
        }
        return rate;
    }

    List<Stale.Row> beside(TaskForm theirs, TaskChoices names) {
        return List.of(
                new Stale.Row("Name", theirs.name, name),
                new Stale.Row("Piece", names.piece(theirs.piece), names.piece(piece)),
                new Stale.Row("Stage", names.stage(theirs.stage), names.stage(stage)),
                new Stale.Row("Quantity", theirs.quantity, quantity),
                new Stale.Row("Hours per unit", theirs.unitHours, unitHours),
                new Stale.Row("Planned for", theirs.plannedOn, plannedOn),
                new Stale.Row("Who", names.person(theirs.assignedTo), names.person(assignedTo)));
    }
}
