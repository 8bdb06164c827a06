package org.tallywright.takeoff;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NotHere;
import org.tallywright.takeoff.formula.Amount;
import org.tallywright.takeoff.formula.FormulaError;

/**
 * What the task lines of a job's pieces come to before whole ones are counted: a van load and a sheet serve several pieces, so
 * rounding each piece up and adding would count trips and sheets that nobody makes.
 */
final class JobSums {
    private final Map<UUID, Worked> byPiece = new LinkedHashMap<>();

    private record Worked(Recipe recipe, int pieces, Map<String, Amount> totals, Map<String, Amount> amounts) {
        /** Of all pieces alike. */
        static Amount of(Recipe.TaskRule task, Map<String, Amount> totals, int pieces) {
            try {
                return task.formula().value(totals).times(Amount.number(pieces));
            } catch (ArithmeticException e) {
                throw FormulaError.tooLarge();
            }
        }
    }

    /** @param key the same for lines of different formulas that count together: the code, and which of its lines this is */
    record Rule(String key, Recipe.TaskRule task) {}

    static List<Rule> rules(Recipe recipe) {
        Map<String, Integer> seen = new HashMap<>();
        List<Rule> rules = new ArrayList<>();
        recipe.tasks()
                .forEach(task ->
                        rules.add(new Rule(task.code() + " #" + seen.merge(task.code(), 1, Integer::sum), task)));
        return rules;
    }

    /** In the order of the job. */
    void add(PieceFacts.Fact piece, Recipe recipe, Map<String, Amount> totals) {
        Map<String, Amount> amounts = new HashMap<>();
        for (Rule rule : rules(recipe)) {
            try {
                amounts.put(rule.key(), Worked.of(rule.task(), totals, piece.count()));
            } catch (FormulaError cannot) {
                // A size is missing, or it becomes too large: this piece does not count in the sums of the others.
                amounts.remove(rule.key());
            }
        }
        byPiece.put(piece.id(), new Worked(recipe, piece.count(), totals, amounts));
    }

    Recipe recipeOf(PieceFacts.Fact piece) {
        return worked(piece).recipe();
    }

    Map<String, Amount> totalsOf(PieceFacts.Fact piece) {
        return worked(piece).totals();
    }

    private Worked worked(PieceFacts.Fact piece) {
        Worked worked = byPiece.get(piece.id());
        if (worked == null) {
            throw new NotHere("piece");
        }
        return worked;
    }

    /**
     * By name: sum of all pieces alike, before, job.
     *
     * @throws FormulaError where the piece's own cannot be worked out
     */
    Map<String, Amount> of(String rule, PieceFacts.Fact piece) {
        Worked own = worked(piece);
        Amount sum = own.amounts().get(rule);
        if (sum == null) {
            // Says why.
            Recipe.TaskRule task = rules(own.recipe()).stream()
                    .filter(one -> one.key().equals(rule))
                    .findFirst()
                    .orElseThrow()
                    .task();
            sum = Worked.of(task, own.totals(), own.pieces());
        }
        Amount before = null;
        Amount job = null;
        boolean earlier = true;
        for (Map.Entry<UUID, Worked> entry : byPiece.entrySet()) {
            earlier &= !entry.getKey().equals(piece.id());
            Amount amount = entry.getValue().amounts().get(rule);
            // Two kinds of pieces may count one code in different kinds of amount; those do not add up.
            if (amount != null && amount.power() == sum.power()) {
                job = plus(job, amount);
                before = earlier ? plus(before, amount) : before;
            }
        }
        Amount none = new Amount(BigInteger.ZERO, BigInteger.ONE, sum.power());
        return Map.of(
                "sum",
                sum,
                "before",
                Objects.requireNonNullElse(before, none),
                "job",
                Objects.requireNonNullElse(job, none));
    }

    private static Amount plus(@Nullable Amount sum, Amount more) {
        try {
            return sum == null ? more : sum.plus(more);
        } catch (ArithmeticException e) {
            throw FormulaError.tooLarge();
        }
    }
}
