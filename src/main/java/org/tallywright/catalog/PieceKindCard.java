package org.tallywright.catalog;

import java.util.List;
import java.util.UUID;

/** A kind of piece and the tasks it proposes, in order. */
public record PieceKindCard(UUID id, String name, boolean active, int version, List<PieceKindLine> lines) {}
