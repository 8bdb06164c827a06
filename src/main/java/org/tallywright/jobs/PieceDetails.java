package org.tallywright.jobs;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** What is to be built: outside sizes as far as they are known, and how many alike. */
public record PieceDetails(
        @Nullable UUID pieceKindId,
        String name,
        @Nullable Length width,
        @Nullable Length height,
        @Nullable Length depth,
        int count,
        String note) {}
