package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.tallywright.catalog.MaterialCard;

/** The pieces of a job whose parts were taken off before a size, a setting or a formula changed. */
@Component
class StalePieces {
    private final PieceFacts pieces;
    private final RecipeBook recipes;
    private final TakeoffDesk desk;
    private final LeftOutParts leftOut;

    StalePieces(PieceFacts pieces, RecipeBook recipes, TakeoffDesk desk, LeftOutParts leftOut) {
        this.pieces = pieces;
        this.recipes = recipes;
        this.desk = desk;
        this.leftOut = leftOut;
    }

    /** @param parts of the job */
    List<PieceFacts.Fact> of(UUID job, List<PartRows.Row> parts, List<MaterialCard> materials) {
        Map<UUID, List<PartRows.Row>> taken = parts.stream()
                .filter(row -> !row.rule().isEmpty())
                .collect(Collectors.groupingBy(PartRows.Row::pieceId));
        if (taken.isEmpty()) {
            return List.of();
        }
        Map<UUID, Map<String, String>> answers = desk.answeredOf(job);
        Map<UUID, Set<String>> out = leftOut.ofJob(job);
        Map<String, Recipe> ofKind = new HashMap<>();
        List<PieceFacts.Fact> stale = new ArrayList<>();
        for (PieceFacts.Fact piece : pieces.ofJob(job)) {
            List<PartRows.Row> own = taken.get(piece.id());
            if (own != null) {
                Recipe recipe = ofKind.computeIfAbsent(
                        String.valueOf(piece.kindId()),
                        kind -> recipes.of(piece.kindId()).recipe());
                Worked worked = desk.worked(piece, recipe, answers.getOrDefault(piece.id(), Map.of()), materials);
                if (!recipe.parts().isEmpty()
                        && ByFormulas.isStale(own, worked, out.getOrDefault(piece.id(), Set.of()))) {
                    stale.add(piece);
                }
            }
        }
        return stale;
    }
}
