package org.tallywright.catalog.web;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.FactorInUse;
import org.tallywright.catalog.Measure;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.Proposal;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.shared.ShopConventions;

/** A kind of piece with its proposed tasks, and their quantities where sizes are tried. */
record PieceKindPage(PieceKindCard kind, List<Row> rows, boolean tried) {
    /**
     * One proposed task.
     *
     * @param as the name of the kind that it is counted as, null for a kind of its own
     * @param quantity with its unit, or null where no sizes are tried or one it needs is missing
     */
    record Row(
            TaskKindCard taskKind,
            @Nullable String as,
            String rule,
            @Nullable String quantity) {}

    static PieceKindPage of(
            PieceKindCard kind,
            TaskKinds taskKinds,
            TrySizes.@Nullable Read sizes,
            PieceKinds pieceKinds,
            ShopConventions shop) {
        List<UUID> ids = kind.lines().stream().map(PieceKindLine::taskKindId).toList();
        Map<UUID, TaskKindCard> kinds = taskKinds.byId(ids);
        Map<UUID, TaskKindCard> counted = taskKinds.countedAs(ids);
        List<Proposal> proposals = sizes == null
                ? List.of()
                : pieceKinds.propose(kind.id(), sizes.width(), sizes.height(), sizes.depth(), sizes.count());
        Set<Proposal> shown = new HashSet<>();
        List<Row> rows = new ArrayList<>();
        for (PieceKindLine line : kind.lines()) {
            TaskKindCard taskKind = kinds.get(line.taskKindId());
            if (taskKind != null) {
                FactorInUse factor = new FactorInUse(line.measure(), taskKind.unit(), shop.units());
                TaskKindCard as = counted.getOrDefault(taskKind.id(), taskKind);
                boolean added = !as.id().equals(taskKind.id()) && sameWhole(kind, line, as.id());
                Proposal proposal = added ? null : of(proposals, as.id(), line);
                boolean again = proposal != null && !shown.add(proposal);
                rows.add(new Row(
                        taskKind,
                        as.id().equals(taskKind.id()) ? null : as.name(),
                        factor.words(line),
                        proposal == null || again
                                ? null
                                : proposal.quantity() + " " + proposal.unit().code()));
            }
        }
        return new PieceKindPage(kind, rows, sizes != null);
    }

    /** Whether the kind that a merged line is counted as has a line of its own to add to. */
    private static boolean sameWhole(PieceKindCard kind, PieceKindLine line, UUID as) {
        return kind.lines().stream()
                .anyMatch(other -> other.taskKindId().equals(as) && wholeJob(other) == wholeJob(line));
    }

    private static boolean wholeJob(PieceKindLine line) {
        return line.measure() == Measure.JOB;
    }

    private static @Nullable Proposal of(List<Proposal> proposals, UUID taskKind, PieceKindLine line) {
        return proposals.stream()
                .filter(p -> p.taskKindId().equals(taskKind) && p.wholeJob() == wholeJob(line))
                .findFirst()
                .orElse(null);
    }
}
