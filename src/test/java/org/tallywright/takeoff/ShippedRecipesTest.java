package org.tallywright.takeoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

/** The formulas that come along, on sizes that a carpenter meets. */
class ShippedRecipesTest {
    private static Worked worked(String kind, String width, String height, String depth) {
        RecipeReader.Read read = RecipeReader.read(ShippedRecipes.of(kind));
        assertThat(read.errors()).isEmpty();
        return Workings.of(
                read.recipe(),
                Workings.sizes(inches(width), inches(height), inches(depth)),
                Map.of(),
                Map.of(),
                Units.IMPERIAL);
    }

    private static Length inches(String typed) {
        return Length.parse(typed, Units.IMPERIAL);
    }

    @ParameterizedTest
    @CsvSource({
        "Bookcase, 34 1/8, 92 3/4, 13 1/2",
        "Bookcase, 120, 96, 12",
        "Window seat, 81 5/8, 18 1/4, 22",
        "Floating shelf, 60, 2 1/2, 10",
        "Locker bank, 93 3/4, 84, 17 1/2",
        "Panelling, 144, 36, 3/4",
        "Panelling, 144, 96, 3/4",
        "Mantel, 72, 54, 8",
        "Counter, 150, 1 1/2, 25",
        "Stair tread, 38 1/4, 1 1/16, 11 1/4"
    })
    void giveWholePartsForEverydaySizes(String kind, String width, String height, String depth) {
        Worked worked = worked(kind, width, height, depth);

        assertThat(worked.problems()).isEmpty();
        assertThat(worked.parts()).isNotEmpty();
        long longest = inches("12 ft").units();
        assertThat(worked.parts()).allMatch(part -> part.length().units() <= longest);
    }

    /** By hand: cases 32 5/8 wide, inside 31 1/8; let in by 1/4 at each end, 31 5/8; loose with 1/8 of play, 31. */
    @Test
    void aBookcaseIsAsOneWouldReckonIt() {
        Map<String, PartDetails> parts = worked("Bookcase", "34 1/8", "92 3/4", "13 1/2").parts().stream()
                .collect(Collectors.toMap(PartDetails::name, part -> part));

        assertThat(size(parts, "Side")).isEqualTo("2 of 92 3/4\" x 12 3/4\"");
        assertThat(size(parts, "Top and bottom")).isEqualTo("2 of 31 5/8\" x 12 1/2\"");
        assertThat(size(parts, "Loose shelf")).isEqualTo("5 of 31\" x 11 3/4\"");
        assertThat(size(parts, "Back")).isEqualTo("1 of 88 3/4\" x 31 5/8\"");
        assertThat(size(parts, "Outer stile")).isEqualTo("2 of 92 3/4\" x 2 1/4\"");
        assertThat(parts).doesNotContainKey("Middle stile");
    }

    private static String size(Map<String, PartDetails> parts, String name) {
        PartDetails part = parts.get(name);
        return part.quantity() + " of " + part.length() + " x " + part.width();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Bookcase",
                "Window seat",
                "Floating shelf",
                "Locker bank",
                "Panelling",
                "Mantel",
                "Counter",
                "Stair tread",
                "anything"
            })
    void haveNoFormulaThatCannotBeWorkedOut(String kind) {
        RecipeReader.Read read = RecipeReader.read(ShippedRecipes.of(kind));
        Worked worked = worked(kind, "72", "60", "16");
        Map<String, org.tallywright.takeoff.formula.Amount> totals =
                Workings.totals(read.recipe(), worked.settings(), worked.parts());

        assertThat(worked.problems()).isEmpty();
        read.recipe()
                .tasks()
                .forEach(task -> assertThat(task.formula().value(totals)).isNotNull());
        read.recipe()
                .supplies()
                .forEach(supply -> assertThat(supply.formula().value(totals)).isNotNull());
    }

    @Test
    void aWrongLineIsToldByLineColumnAndCharacter() {
        List<RecipeError> errors = RecipeReader.read(
                        "setting | shelves | Shelves | 3 +\npart | Side | case | 2 | height | depth\nmirror | x")
                .errors();

        assertThat(errors)
                .extracting(RecipeError::words)
                .anySatisfy(words -> assertThat(words).startsWith("Line 1, formula: At character 4:"));
        assertThat(errors)
                .extracting(RecipeError::words)
                .anySatisfy(words ->
                        assertThat(words).isEqualTo("Line 2, material: There is no line \"material | case\"."));
        assertThat(errors).extracting(RecipeError::line).contains(3);
    }

    @Test
    void totalsAddUp() {
        Recipe recipe = RecipeReader.read(
                        "material | case | Case | x\npart | Side | case | 2 | height | depth | along | | 1 | 2 | 1 | 3")
                .recipe();
        Worked worked = Workings.of(
                recipe, Workings.sizes(null, inches("30"), inches("10")), Map.of(), Map.of(), Units.IMPERIAL);
        Map<String, org.tallywright.takeoff.formula.Amount> totals =
                new HashMap<>(Workings.totals(recipe, worked.settings(), worked.parts()));

        // Two sides: one long and two short edges each are 50 in; a face of 300 sq in each; 3 joints each.
        assertThat(totals.get("band").decimal().longValue())
                .isEqualTo(inches("100").units());
        assertThat(totals.get("joints").decimal().intValue()).isEqualTo(6);
        assertThat(Measured.in(org.tallywright.shared.Unit.SF, totals.get("faces"), 3)
                        .amount())
                .isEqualByComparingTo("12.5");
        assertThat(totals.get("case_parts").decimal().intValue()).isEqualTo(2);
    }
}
