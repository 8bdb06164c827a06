package org.tallywright.past;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.PieceGeometry;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Length;

/** A piece of a past job. */
public record PastPiece(UUID id, PieceDetails details) {
    static PieceGeometry shape(PieceDetails piece) {
        return shape(piece.width(), piece.height(), piece.depth(), piece.count());
    }

    static PieceGeometry shape(@Nullable Length width, @Nullable Length height, @Nullable Length depth, int count) {
        return new PieceGeometry(units(width), units(height), units(depth), count);
    }

    private static @Nullable Long units(@Nullable Length length) {
        return length == null ? null : length.units();
    }
}
