package org.tallywright.estimates.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.EstimateTasks;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitHours;
import org.tallywright.web.FormReader;

/** A task line as typed. An empty rate is the catalogue's. */
record TaskLineForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String taskKind,
        @Nullable String piece,
        @Nullable String quantity,
        @Nullable String unitHours,
        @Nullable String then) {

    static TaskLineForm blank(@Nullable String piece) {
        return new TaskLineForm(Ids.next(), null, "", Picked.text(piece), "", "", "");
    }

    static TaskLineForm of(EstimateTasks.Line line) {
        UUID piece = line.details().pieceId();
        return new TaskLineForm(
                line.id(),
                line.version(),
                line.details().taskKindId().toString(),
                piece == null ? "" : piece.toString(),
                line.details().quantity().toString(),
                String.valueOf(line.details().unitHours()),
                "");
    }

    /** Null with the refusals in the reader. */
    EstimateTasks.@Nullable Draft read(FormReader read) {
        UUID own = read.field("", () -> Picked.own(id));
        UUID kind = read.field("taskKind", () -> Picked.id(taskKind));
        UUID where = read.optional("piece", piece, () -> Picked.id(piece));
        Quantity much = read.field("quantity", () -> Quantity.of(Picked.text(quantity)));
        UnitHours rate = read.optional("unitHours", unitHours, () -> UnitHours.of(Picked.text(unitHours)));
        if (read.refused() || kind == null || much == null || own == null) {
            return null;
        }
        return new EstimateTasks.Draft(own, version, kind, where, much, rate);
    }

    /** @param pieces names by id; a line without a piece is of the whole job */
    List<Stale.Row> beside(TaskLineForm theirs, Map<String, String> pieces) {
        return List.of(
                new Stale.Row("Piece", name(theirs.piece, pieces), name(piece, pieces)),
                new Stale.Row("Quantity", Picked.text(theirs.quantity), Picked.text(quantity)),
                new Stale.Row("Hours per unit", Picked.text(theirs.unitHours), Picked.text(unitHours)));
    }

    private static String name(@Nullable String piece, Map<String, String> pieces) {
        return pieces.getOrDefault(Picked.text(piece), "");
    }

    boolean another() {
        return "another".equals(then);
    }
}
