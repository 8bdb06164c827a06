package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Grain;
import org.tallywright.takeoff.formula.Formula;
import org.tallywright.takeoff.formula.FormulaError;

/** Reads formulas line by line, columns between upright strokes; gathers every error with its line and column. */
public final class RecipeReader {
    public static final int MOST_LINES = 200;
    public static final int MOST_CHARACTERS = 20_000;
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9_]{0,29}");
    private static final Set<String> TAKEN = Set.of(
            "width", "height", "depth", "min", "max", "up", "down", "if", "parts", "joints", "band", "faces", "run");
    /** What a task line's last column counts with. Read all the same, for what a shop wrote before they were refused. */
    private static final Set<String> OF_THE_JOB = Set.of("sum", "before", "job");
    /** As the rule of the second part of one name is called. */
    private static final Pattern NUMBERED = Pattern.compile(".* #[0-9]+");

    private static final List<String> PART_COLUMNS = List.of(
            "part",
            "name",
            "material",
            "how many",
            "length",
            "width",
            "grain",
            "match",
            "long edges banded",
            "short edges banded",
            "faces finished",
            "joints");

    private final List<RecipeError> errors = new ArrayList<>();
    private final List<Recipe.Setting> settings = new ArrayList<>();
    private final List<Recipe.Slot> slots = new ArrayList<>();
    private final List<Recipe.PartRule> parts = new ArrayList<>();
    private final List<Recipe.TaskRule> tasks = new ArrayList<>();
    private final List<Recipe.Supply> supplies = new ArrayList<>();
    private final Set<String> names = new HashSet<>(TAKEN);

    private RecipeReader() {}

    /** @param recipe what could be read */
    public record Read(Recipe recipe, List<RecipeError> errors) {}

    public static Read read(String text) {
        RecipeReader reader = new RecipeReader();
        String[] lines = text.split("\n", -1);
        if (lines.length > MOST_LINES) {
            reader.errors.add(new RecipeError(0, "", "There is room for " + MOST_LINES + " lines."));
        }
        for (int i = 0; i < lines.length && i < MOST_LINES; i++) {
            String line = lines[i].strip();
            if (!line.isEmpty() && !line.startsWith("#")) {
                reader.line(i + 1, line.split("\\|", -1));
            }
        }
        Recipe recipe = new Recipe(reader.settings, reader.slots, reader.parts, reader.tasks, reader.supplies);
        reader.slotsKnown(recipe);
        return new Read(recipe, List.copyOf(reader.errors));
    }

    private void line(int line, String[] columns) {
        for (int i = 0; i < columns.length; i++) {
            columns[i] = columns[i].strip();
        }
        switch (columns[0].toLowerCase(Locale.ROOT)) {
            case "setting" -> setting(line, columns);
            case "material" -> slot(line, columns);
            case "part" -> part(line, columns);
            case "task" -> task(line, columns);
            case "supply" -> supply(line, columns);
            default ->
                errors.add(new RecipeError(line, "", "A line starts with setting, material, part, task, supply or #."));
        }
    }

    private boolean wants(int line, String[] columns, int least, int most, String shape) {
        if (columns.length < least || columns.length > most) {
            errors.add(new RecipeError(line, "", "Write it as: " + shape));
            return false;
        }
        return true;
    }

    private @Nullable String name(int line, String typed, Set<String> seen) {
        String name = typed.toLowerCase(Locale.ROOT);
        if (!NAME.matcher(name).matches()) {
            errors.add(new RecipeError(
                    line, "name", "A name is small letters, digits and _ and starts with a letter, at most 30."));
            return null;
        }
        if (!seen.add(name)) {
            errors.add(new RecipeError(line, "name", "\"" + name + "\" means something already."));
            return null;
        }
        return name;
    }

    private void setting(int line, String[] columns) {
        if (wants(line, columns, 4, 4, "setting | name | what it is | formula")) {
            String name = name(line, columns[1], names);
            if (name != null && OF_THE_JOB.contains(name)) {
                errors.add(new RecipeError(line, "name", "\"" + name + "\" means something already."));
            }
            Formula formula = formula(line, "formula", columns[3]);
            if (name != null && formula != null) {
                settings.add(new Recipe.Setting(line, name, shortened(columns[2]), formula));
            }
        }
    }

    private void slot(int line, String[] columns) {
        if (wants(line, columns, 3, 4, "material | name | what it is | code of the catalogue")) {
            Set<String> seen = new HashSet<>();
            slots.forEach(slot -> seen.add(slot.name()));
            String name = name(line, columns[1], seen);
            if (name != null) {
                slots.add(new Recipe.Slot(
                        line, name, shortened(columns[2]), columns.length > 3 ? shortened(columns[3]) : ""));
            }
        }
    }

    private void part(int line, String[] columns) {
        String shape = "part | name | material | how many | length | width, then if wanted grain | match |"
                + " long edges banded | short edges banded | faces finished | joints";
        if (!wants(line, columns, 6, 12, shape)) {
            return;
        }
        if (columns[1].isEmpty()) {
            errors.add(new RecipeError(line, "name", "A part has a name."));
        }
        if (NUMBERED.matcher(shortened(columns[1])).matches()) {
            errors.add(new RecipeError(
                    line,
                    "name",
                    "A name does not end in # and a number: parts of one name are" + " told apart that way."));
        }
        Grain grain = grain(line, columns.length > 6 ? columns[6] : "");
        List<Formula> formulas = new ArrayList<>();
        for (int at : new int[] {3, 4, 5, 8, 9, 10, 11}) {
            String typed = columns.length > at && !columns[at].isEmpty() ? columns[at] : at > 5 ? "0" : "";
            Formula formula = formula(line, PART_COLUMNS.get(at), typed);
            if (formula != null) {
                formulas.add(formula);
            }
        }
        if (formulas.size() == 7 && grain != null && !columns[1].isEmpty()) {
            parts.add(new Recipe.PartRule(
                    line,
                    shortened(columns[1]),
                    columns[2].toLowerCase(Locale.ROOT),
                    formulas.get(0),
                    formulas.get(1),
                    formulas.get(2),
                    grain,
                    columns.length > 7 ? cut(columns[7], 20) : "",
                    formulas.get(3),
                    formulas.get(4),
                    formulas.get(5),
                    formulas.get(6)));
        }
    }

    private @Nullable Grain grain(int line, String typed) {
        return switch (typed.toLowerCase(Locale.ROOT)) {
            case "", "any" -> Grain.ANY;
            case "along" -> Grain.ALONG;
            case "across" -> Grain.ACROSS;
            default -> {
                errors.add(new RecipeError(line, "grain", "Grain is along, across or any."));
                yield null;
            }
        };
    }

    private void task(int line, String[] columns) {
        if (wants(line, columns, 3, 4, "task | code of the task kind | formula, then if wanted how pieces add up")) {
            Formula formula = formula(line, "formula", columns[2]);
            boolean plain = columns.length < 4 || columns[3].isEmpty();
            Formula together = plain ? null : formula(line, "how pieces add up", columns[3]);
            if (formula != null && (plain || together != null)) {
                tasks.add(new Recipe.TaskRule(line, cut(columns[1].toLowerCase(Locale.ROOT), 60), formula, together));
            }
        }
    }

    private void supply(int line, String[] columns) {
        if (wants(line, columns, 3, 3, "supply | material | formula")) {
            Formula formula = formula(line, "formula", columns[2]);
            if (formula != null) {
                supplies.add(new Recipe.Supply(line, columns[1].toLowerCase(Locale.ROOT), formula));
            }
        }
    }

    private @Nullable Formula formula(int line, String column, String typed) {
        try {
            return Formula.parse(typed);
        } catch (FormulaError error) {
            errors.add(new RecipeError(line, column, error.sentence()));
            return null;
        }
    }

    private void slotsKnown(Recipe recipe) {
        recipe.parts().stream()
                .filter(part -> !recipe.hasSlot(part.slot()))
                .forEach(part -> unknown(part.line(), part.slot()));
        recipe.supplies().stream()
                .filter(supply -> !recipe.hasSlot(supply.slot()))
                .forEach(supply -> unknown(supply.line(), supply.slot()));
    }

    private void unknown(int line, String slot) {
        errors.add(new RecipeError(line, "material", "There is no line \"material | " + cut(slot, 40) + "\"."));
    }

    private static String shortened(String text) {
        return cut(text, 120);
    }

    private static String cut(String text, int most) {
        return text.codePointCount(0, text.length()) <= most
                ? text
                : text.substring(0, text.offsetByCodePoints(0, most));
    }
}
