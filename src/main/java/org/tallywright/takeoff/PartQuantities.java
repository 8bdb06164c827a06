package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.jobs.TakenOff;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.takeoff.formula.Amount;
import org.tallywright.takeoff.formula.Formula;
import org.tallywright.takeoff.formula.FormulaError;

/** From the parts of a piece, by the task lines of its formulas, to quantities of task kinds. */
@Component
class PartQuantities implements TakenOff {
    private final PieceFacts pieces;
    private final PartRows rows;
    private final RecipeBook recipes;
    private final TakeoffDesk desk;
    private final TaskKinds taskKinds;

    PartQuantities(PieceFacts pieces, PartRows rows, RecipeBook recipes, TakeoffDesk desk, TaskKinds taskKinds) {
        this.pieces = pieces;
        this.rows = rows;
        this.recipes = recipes;
        this.desk = desk;
        this.taskKinds = taskKinds;
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, Quantity> quantities(UUID jobId, UUID pieceId) {
        Map<UUID, List<PartDetails>> parts = rows.ofJob(jobId).stream()
                .collect(Collectors.groupingBy(
                        PartRows.Row::pieceId, Collectors.mapping(PartRows.Row::details, Collectors.toList())));
        PieceFacts.Fact piece = pieces.of(jobId, pieceId);
        if (!parts.containsKey(pieceId)) {
            return Map.of();
        }
        JobSums sums = sums(jobId, parts);
        Recipe recipe = sums.recipeOf(piece);
        Map<String, Amount> totals = sums.totalsOf(piece);
        Map<String, TaskKindCard> kinds =
                taskKinds.all().stream().collect(Collectors.toMap(TaskKindCard::code, kind -> kind));
        Map<UUID, Quantity> quantities = new LinkedHashMap<>();
        Set<UUID> unknown = new HashSet<>();
        for (JobSums.Rule rule : JobSums.rules(recipe)) {
            TaskKindCard kind = kinds.get(rule.task().code());
            if (kind != null) {
                try {
                    Amount amount = rule.task().together(totals, sums.of(rule.key(), piece));
                    quantities.merge(kind.id(), Measured.in(kind.unit(), amount, 1), Quantity::plus);
                } catch (FormulaError | NotUnderstood cannot) {
                    // A size is missing, say: the catalogue's rule of thumb stays for this kind.
                    unknown.add(kind.id());
                }
            }
        }
        quantities.keySet().removeAll(unknown);
        return quantities;
    }

    private JobSums sums(UUID jobId, Map<UUID, List<PartDetails>> parts) {
        Map<UUID, Map<String, String>> answers = desk.answeredOf(jobId);
        JobSums sums = new JobSums();
        Map<String, Recipe> ofKind = new HashMap<>();
        for (PieceFacts.Fact piece : pieces.ofJob(jobId)) {
            List<PartDetails> own = parts.get(piece.id());
            if (own != null) {
                Recipe recipe = ofKind.computeIfAbsent(
                        String.valueOf(piece.kindId()),
                        kind -> recipes.of(piece.kindId()).recipe());
                sums.add(piece, recipe, totals(piece, recipe, own, answers.getOrDefault(piece.id(), Map.of())));
            }
        }
        return sums;
    }

    /** Settings and totals of one piece by name. */
    static Map<String, Amount> totals(
            PieceFacts.Fact piece, Recipe recipe, List<PartDetails> parts, Map<String, String> answers) {
        Map<String, Formula> own = new HashMap<>();
        answers.forEach((name, typed) -> {
            try {
                if (!name.startsWith(TakeoffDesk.MATERIAL)) {
                    own.put(name, Formula.parse(typed));
                }
            } catch (FormulaError kept) {
                own.remove(name);
            }
        });
        Map<String, Amount> settings = Workings.settings(
                recipe, Workings.sizes(piece.width(), piece.height(), piece.depth()), own, new ArrayList<>());
        return Workings.totals(recipe, settings, parts);
    }
}
