package org.tallywright.past;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;

/**
 * What is copied, as ticked and changed.
 *
 * @param id made by the page; the same again is a repeat
 * @param fromPiece null for a whole job
 * @param what where it comes from, in words
 */
public record CopyPlan(
        UUID id,
        PastJob from,
        @Nullable UUID fromPiece,
        String what,
        List<PieceLine> pieces,
        List<TaskLine> tasks,
        List<MaterialLine> materials,
        List<PastCost> costs) {

    /**
     * @param source the past piece
     * @param into the piece of the job that takes its lines; null: a new one is made
     * @param parts whether its parts and answers go along
     * @param sameSizes whether parts listed by hand fit
     */
    public record PieceLine(
            UUID source, @Nullable UUID into, PieceDetails details, boolean parts, boolean sameSizes, String origin) {}

    /**
     * @param piece the past piece that it goes with, null for the whole job
     * @param rate null for the rate book's of today
     */
    public record TaskLine(
            UUID source,
            @Nullable UUID piece,
            UUID kindId,
            String name,
            Quantity quantity,
            @Nullable UnitHours rate,
            String origin) {}

    /** @param price null for the catalogue's of today */
    public record MaterialLine(
            UUID source,
            @Nullable UUID piece,
            UUID materialId,
            Quantity net,
            @Nullable UnitPrice price,
            String origin) {}

    /** The piece that the lines of a past one go to, new or not. */
    @Nullable
    UUID pieceOf(@Nullable UUID source) {
        for (PieceLine piece : pieces) {
            if (piece.source().equals(source)) {
                return piece.into() == null ? idOf(piece.source()) : piece.into();
            }
        }
        return null;
    }

    boolean isEmpty() {
        boolean noNewPiece = pieces.stream().allMatch(piece -> piece.into() != null);
        return noNewPiece && tasks.isEmpty() && materials.isEmpty() && costs.isEmpty();
    }

    /** One id for all that is copied, whatever is said of where it comes from; a piece that takes the lines may change meanwhile. */
    UUID content() {
        List<Object> said = new ArrayList<>();
        for (PieceLine piece : pieces) {
            said.add(piece.source());
            said.add(piece.into() == null ? piece.details() : piece.into());
            said.add(piece.parts());
        }
        for (TaskLine task : tasks) {
            said.add(Arrays.asList(task.source(), task.kindId(), task.quantity(), task.rate()));
        }
        for (MaterialLine line : materials) {
            said.add(Arrays.asList(line.source(), line.materialId(), line.net(), line.price()));
        }
        costs.forEach(cost -> said.add(List.of(cost.id(), cost.amount())));
        return UUID.nameUUIDFromBytes(said.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** The id that the copy of a thing has: it follows from the copy's, so that a repeat makes nothing new. */
    UUID idOf(UUID source) {
        return UUID.nameUUIDFromBytes((id + "/" + source).getBytes(StandardCharsets.UTF_8));
    }
}
