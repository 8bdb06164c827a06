package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.shared.Length;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Units;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.takeoff.formula.Amount;
import org.tallywright.takeoff.formula.FormulaError;
import org.tallywright.trail.Trail;

/** The formulas of each kind of piece: the shop's own where it has written some, else the shipped ones. */
@Service
public class RecipeBook {
    /** Sizes on which formulas are tried before they are kept: no piece in particular. */
    private static final Map<String, Amount> TRIAL = Workings.sizes(inches("48"), inches("60"), inches("16"));

    private final PieceKindRecipes rows;
    private final PieceKinds kinds;
    private final TaskKinds taskKinds;
    private final JdbcClient jdbc;
    private final SaveTurn turn;
    private final Trail trail;

    RecipeBook(
            PieceKindRecipes rows, PieceKinds kinds, TaskKinds taskKinds, JdbcClient jdbc, SaveTurn turn, Trail trail) {
        this.rows = rows;
        this.kinds = kinds;
        this.taskKinds = taskKinds;
        this.jdbc = jdbc;
        this.turn = turn;
        this.trail = trail;
    }

    private static Length inches(String typed) {
        return Length.parse(typed, Units.IMPERIAL);
    }

    /** @param version null where the shop has not written its own */
    public record Page(String text, @Nullable Integer version) {
        public boolean isShipped() {
            return version == null;
        }

        public Recipe recipe() {
            return RecipeReader.read(text).recipe();
        }
    }

    /** @param kindId null for a piece of no kind: only what parts listed by hand come to */
    @Transactional(readOnly = true)
    public Page of(@Nullable UUID kindId) {
        if (kindId == null) {
            return new Page(ShippedRecipes.of(""), null);
        }
        return jdbc.sql("""
                        select k.name, r.body, r.version from piece_kind k
                        left join piece_kind_recipe r on r.id = k.id where k.id = ?""")
                .param(kindId)
                .query((row, n) -> row.getString(2) == null
                        ? new Page(ShippedRecipes.of(row.getString(1)), null)
                        : new Page(row.getString(2), row.getInt(3)))
                .optional()
                .orElseGet(() -> new Page(ShippedRecipes.of(""), null));
    }

    /** Every reason why a text cannot be kept: lines that cannot be read, names that are unknown. */
    @Transactional(readOnly = true)
    public List<RecipeError> errors(String text) {
        RecipeReader.Read read = RecipeReader.read(text);
        List<RecipeError> errors = new ArrayList<>(read.errors());
        if (!errors.isEmpty()) {
            return errors;
        }
        Recipe recipe = read.recipe();
        Worked worked = Workings.of(recipe, TRIAL, Map.of(), Map.of(), Units.IMPERIAL);
        worked.problems().stream()
                .filter(problem -> problem.sentence().startsWith("At character"))
                .forEach(errors::add);
        Map<String, Amount> totals = Workings.totals(recipe, worked.settings(), worked.parts());
        Set<String> codes = taskKinds.all().stream().map(TaskKindCard::code).collect(Collectors.toSet());
        for (Recipe.TaskRule rule : recipe.tasks()) {
            tried(
                    rule.line(),
                    "formula",
                    () -> {
                        Amount one = rule.formula().value(totals);
                        rule.together(totals, Map.of("sum", one, "before", one, "job", one));
                    },
                    errors);
            if (!codes.contains(rule.code())) {
                errors.add(new RecipeError(
                        rule.line(),
                        "task kind",
                        "The catalogue has no task kind with the code \"" + rule.code() + "\"."));
            }
        }
        recipe.supplies()
                .forEach(rule ->
                        tried(rule.line(), "formula", () -> rule.formula().value(totals), errors));
        return errors;
    }

    private static void tried(int line, String column, Runnable formula, List<RecipeError> errors) {
        try {
            formula.run();
        } catch (FormulaError error) {
            errors.add(new RecipeError(line, column, error.sentence()));
        }
    }

    /**
     * Keeps the shop's own formulas. The same again is a repeat.
     *
     * @throws Refused with every error, one a line
     * @throws Stale where somebody else wrote in between
     */
    @Transactional
    public void write(UUID kindId, @Nullable Integer version, String text, UUID by) {
        trail.by(by);
        turn.of(kindId);
        kinds.card(kindId);
        List<RecipeError> errors = errors(text);
        if (!errors.isEmpty()) {
            throw new Refused(
                    "text", errors.stream().limit(8).map(RecipeError::words).collect(Collectors.joining(" ")));
        }
        PieceKindRecipe kept = rows.findById(kindId).orElse(null);
        if (kept == null) {
            if (version != null) {
                throw new Stale("list of formulas", List.of(new Stale.Row("Formulas", "the shipped ones", text)));
            }
            rows.save(new PieceKindRecipe(kindId, text));
        } else if (!kept.body().equals(text)) {
            if (!kept.isAt(version)) {
                throw new Stale("list of formulas", List.of(new Stale.Row("Formulas", kept.body(), text)));
            }
            kept.rewrite(text);
        }
    }

    /** Back to the shipped formulas; said again it is a repeat. */
    @Transactional
    public void drop(UUID kindId, UUID by) {
        trail.by(by);
        turn.of(kindId);
        kinds.card(kindId);
        rows.findById(kindId).ifPresent(rows::delete);
    }
}
