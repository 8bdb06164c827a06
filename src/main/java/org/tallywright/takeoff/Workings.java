package org.tallywright.takeoff;

import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.formula.Amount;
import org.tallywright.takeoff.formula.Formula;
import org.tallywright.takeoff.formula.FormulaError;

/**
 * Works formulas out. A part is cut to the nearest 1/64 in or tenth of a millimetre; numbers of parts go up to whole ones;
 * a part that comes to no number at all is left out.
 */
public final class Workings {
    private static final int MOST_OF_ONE = 9_999;
    private static final long LONGEST = 32_000_000;
    private static final long SIXTY_FOURTH = 127;
    private static final long TENTH = 32;

    private Workings() {}

    /** The sizes of the whole piece by name, as far as they are known. */
    public static Map<String, Amount> sizes(@Nullable Length width, @Nullable Length height, @Nullable Length depth) {
        Map<String, Amount> sizes = new LinkedHashMap<>();
        put(sizes, "width", width);
        put(sizes, "height", height);
        put(sizes, "depth", depth);
        return sizes;
    }

    private static void put(Map<String, Amount> sizes, String name, @Nullable Length length) {
        if (length != null) {
            sizes.put(name, Amount.length(length.units()));
        }
    }

    /**
     * @param answers a piece's own formulas by the name of the setting
     * @param materials by slot
     */
    public static Worked of(
            Recipe recipe,
            Map<String, Amount> sizes,
            Map<String, Formula> answers,
            Map<String, UUID> materials,
            Units units) {
        List<RecipeError> problems = new ArrayList<>();
        Map<String, Amount> known = settings(recipe, sizes, answers, problems);
        List<PartDetails> parts = new ArrayList<>();
        List<String> rules = new ArrayList<>();
        Map<String, Integer> named = new HashMap<>();
        for (Recipe.PartRule rule : recipe.parts()) {
            int n = named.merge(rule.name(), 1, Integer::sum);
            try {
                PartDetails part = part(rule, known, materials, units, problems);
                if (part != null) {
                    parts.add(part);
                    rules.add(n == 1 ? rule.name() : rule.name() + " #" + n);
                }
            } catch (FormulaError error) {
                problems.add(new RecipeError(rule.line(), rule.name(), error.sentence()));
            }
        }
        return new Worked(known, parts, rules, problems);
    }

    /** Sizes and settings by name; a setting may use those above it. */
    public static Map<String, Amount> settings(
            Recipe recipe, Map<String, Amount> sizes, Map<String, Formula> answers, List<RecipeError> problems) {
        Map<String, Amount> known = new LinkedHashMap<>(sizes);
        for (Recipe.Setting setting : recipe.settings()) {
            Formula own = answers.get(setting.name());
            Formula formula = own == null ? setting.formula() : own;
            try {
                if (formula.names().contains(setting.name())) {
                    problems.add(problem(setting, own, usesItself(formula, setting.name())));
                } else {
                    known.put(setting.name(), formula.value(known));
                }
            } catch (FormulaError error) {
                problems.add(problem(setting, own, error.sentence()));
            }
        }
        return known;
    }

    /** Of a piece's own formula it is told by the name of the setting, beside whose box it belongs. */
    private static RecipeError problem(Recipe.Setting setting, @Nullable Formula own, String sentence) {
        return own == null
                ? new RecipeError(setting.line(), setting.label(), sentence)
                : new RecipeError(0, setting.name(), sentence);
    }

    private static String usesItself(Formula formula, String name) {
        int at = Math.max(0, formula.toString().toLowerCase(Locale.ROOT).indexOf(name)) + 1;
        return "At character " + at + ": \"" + name
                + "\" uses itself; a setting may use the sizes and the settings above it.";
    }

    private static @Nullable PartDetails part(
            Recipe.PartRule rule,
            Map<String, Amount> known,
            Map<String, UUID> materials,
            Units units,
            List<RecipeError> problems) {
        long quantity = count(rule.quantity(), known);
        if (quantity <= 0) {
            return null;
        }
        Length length = length(rule.length(), known, units);
        Length width = length(rule.width(), known, units);
        if (quantity > MOST_OF_ONE
                || length.units() <= 0
                || width.units() <= 0
                || length.units() > LONGEST
                || width.units() > LONGEST) {
            problems.add(new RecipeError(
                    rule.line(),
                    rule.name(),
                    "comes to " + quantity + " of " + length.format(units) + " x " + width.format(units)
                            + ", which cannot be cut. Check sizes and settings."));
            return null;
        }
        return new PartDetails(
                rule.name(),
                (int) quantity,
                length,
                width,
                materials.get(rule.slot()),
                rule.slot(),
                rule.grain(),
                rule.matched(),
                within(rule.longEdges(), known, 2),
                within(rule.shortEdges(), known, 2),
                within(rule.faces(), known, 2),
                within(rule.joints(), known, 99));
    }

    private static long count(Formula formula, Map<String, Amount> known) {
        return formula.value(known, 0)
                .whole(RoundingMode.CEILING)
                .min(BigInteger.valueOf(1_000_000))
                .longValue();
    }

    private static int within(Formula formula, Map<String, Amount> known, int most) {
        return (int) Math.max(0, Math.min(most, count(formula, known)));
    }

    private static Length length(Formula formula, Map<String, Amount> known, Units units) {
        long step = units == Units.METRIC ? TENTH : SIXTY_FOURTH;
        return new Length(marks(formula.value(known, 1), Amount.length(step))
                .max(BigInteger.valueOf(-LONGEST))
                .min(BigInteger.valueOf(LONGEST))
                .multiply(java.math.BigInteger.valueOf(step))
                .longValue());
    }

    private static BigInteger marks(Amount length, Amount step) {
        try {
            return length.over(step).whole(RoundingMode.HALF_UP);
        } catch (ArithmeticException e) {
            throw FormulaError.tooLarge();
        }
    }

    /**
     * What parts come to, by name: {@code parts, joints, band, faces, run}, and for each material its
     * {@code _parts, _area, _run, _band}. For one piece.
     */
    public static Map<String, Amount> totals(Recipe recipe, Map<String, Amount> settings, List<PartDetails> parts) {
        Map<String, Amount> totals = new HashMap<>(settings);
        totals.put("parts", Amount.ZERO);
        totals.put("joints", Amount.ZERO);
        totals.put("band", Amount.length(0));
        totals.put("run", Amount.length(0));
        totals.put("faces", Amount.length(0).times(Amount.length(0)));
        for (Recipe.Slot slot : recipe.slots()) {
            totals.put(slot.name() + "_parts", Amount.ZERO);
            totals.put(slot.name() + "_run", Amount.length(0));
            totals.put(slot.name() + "_band", Amount.length(0));
            totals.put(slot.name() + "_area", Amount.length(0).times(Amount.length(0)));
        }
        for (PartDetails part : parts) {
            add(totals, part);
        }
        return totals;
    }

    private static void add(Map<String, Amount> totals, PartDetails part) {
        Amount many = Amount.number(part.quantity());
        Amount length = Amount.length(part.length().units());
        Amount width = Amount.length(part.width().units());
        Amount area = length.times(width).times(many);
        Amount band = length.times(Amount.number(part.longEdges()))
                .plus(width.times(Amount.number(part.shortEdges())))
                .times(many);
        sum(totals, "parts", many);
        sum(totals, "joints", many.times(Amount.number(part.joints())));
        sum(totals, "band", band);
        sum(totals, "run", length.times(many));
        sum(totals, "faces", area.times(Amount.number(part.faces())));
        if (!part.slot().isEmpty()) {
            sum(totals, part.slot() + "_parts", many);
            sum(totals, part.slot() + "_run", length.times(many));
            sum(totals, part.slot() + "_band", band);
            sum(totals, part.slot() + "_area", area);
        }
    }

    private static void sum(Map<String, Amount> totals, String name, Amount more) {
        Amount now = totals.get(name);
        totals.put(name, now == null || now.power() != more.power() ? more : now.plus(more));
    }
}
