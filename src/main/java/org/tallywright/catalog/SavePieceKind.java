package org.tallywright.catalog;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Adds a kind of piece or rewrites one, with the tasks it proposes in order. */
public record SavePieceKind(UUID id, @Nullable Integer version, String name, List<PieceKindLine> lines) {}
