package org.tallywright.takeoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.formula.Amount;

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

    /**
     * By hand. Sheet goods: a bottom between two sides is the width less two thicknesses, let in it gains a dado at each
     * end. Frames: rails fill what the stiles leave. Doors: rails and panel reach into the grooves, the panel with play.
     */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
                    Bookcase      | 34 1/8  | 92 3/4 | 13 1/2 | 2 Side 92 3/4" x 12 3/4"; 2 Top and bottom 31 5/8" x 12 1/2"; 5 Loose shelf 31" x 11 3/4"; 1 Back 88 3/4" x 31 5/8"; 2 Outer stile 92 3/4" x 2 1/4"; 2 Rail 29 5/8" x 1 1/2"
                    Shelf case    | 34 1/8  | 92 3/4 | 13 1/2 | 2 Side 92 3/4" x 12 3/4"
                    Wall case     | 30      | 30     | 13     | 2 Side 30" x 12 1/4"; 2 Top and bottom 27 1/2" x 12 1/4"; 1 Back 28 1/2" x 27 1/2"; 2 Loose shelf 27 3/8" x 11"; 4 Door stile 29 7/8" x 2 1/4"; 4 Door rail 10 5/8" x 2 1/4"; 2 Door panel 26" x 10 1/2"; 2 Scribe strip 30" x 1 1/2"; 1 Crown 34" x 4 1/4"
                    Base case     | 36      | 34 1/2 | 24     | 2 Side 29 3/4" x 23"; 1 Bottom 34 1/2" x 23"; 1 Back 29 3/4" x 36"; 1 Loose shelf 34 3/8" x 22"; 2 Base cross piece 18 1/2" x 4"; 4 Door stile 23 5/8" x 2 1/4"; 4 Door rail 14 1/8" x 2 1/4"; 2 Door panel 19 3/4" x 14"; 1 Drawer front 35 7/8" x 5 7/8"; 2 Drawer side 21" x 4"; 2 Drawer front and back 32 1/2" x 4"; 1 Drawer bottom 33" x 20 1/2"; 1 Top 36" x 24 3/4"
                    Tall case     | 30      | 84     | 24     | 2 Side 80" x 23"; 3 Top, bottom and fixed shelf 27 1/2" x 23"; 3 Loose shelf 27 3/8" x 22 3/4"; 1 Back 80" x 29"; 2 Scribe strip 84" x 1 1/2"; 8 Door stile 39 7/8" x 2 1/4"; 8 Door rail 10 5/8" x 2 1/4"; 4 Door panel 36" x 10 1/2"
                    Pantry case   | 60      | 94     | 18     | 4 Side 90" x 17"; 8 Top, bottom and fixed shelf 28 1/4" x 17"; 2 Outer stile 90" x 2 1/2"; 1 Middle stile 90" x 1 3/4"; 6 Rail 26 5/8" x 1 3/4"; 16 Door stile 42 1/8" x 2 1/4"; 16 Door rail 9 3/8" x 2 1/4"; 8 Door panel 38 1/4" x 9 1/4"; 12 Tray side 15" x 3"; 12 Tray front and back 22 5/8" x 3"; 6 Tray bottom 23 1/8" x 14 1/2"
                    Pantry case   | 30      | 94     | 24     | 3 Rail 25" x 1 3/4"; 6 Tray side 21" x 3"; 6 Tray front and back 21" x 3"; 3 Tray bottom 21 1/2" x 20 1/2"
                    Drawer bank   | 36      | 40     | 24     | 2 Side 40" x 23"; 2 Top and bottom 33 1/2" x 23"; 1 Back 40" x 34 1/2"; 5 Rail 31 1/2" x 1 1/2"; 4 Drawer front 31 1/4" x 7 7/8"; 8 Drawer side 21" x 7 1/8"; 8 Drawer front and back 29 1/2" x 7 1/8"; 4 Drawer bottom 30" x 20 1/2"
                    Desk          | 72      | 30     | 28     | 1 Top 73" x 28 1/2"; 2 Long apron 67 3/4" x 4"; 2 Side apron 24 3/4" x 4"; 8 Leg layer 29" x 2 1/8"
                    Window seat   | 81 5/8  | 18 1/4 | 22     | 6 Side 17 1/4" x 21 1/4"; 3 Bottom 25 11/16" x 21 1/4"; 1 Seat 81 5/8" x 22 3/4"; 6 Rail 24" x 2"
                    Bench         | 81 5/8  | 18 1/4 | 22     | 6 Side 17 1/4" x 21 1/4"
                    Floating shelf| 60      | 2 1/2  | 10     | 1 Top skin 60" x 9 1/4"; 2 End 9 1/4" x 1"; 1 Cleat 58 3/8" x 1"; 5 Rib 8" x 1"
                    Locker bank   | 93 3/4  | 84     | 17 1/2 | 6 Upright 80" x 16 3/4"; 20 Fixed shelf 18" x 16 3/4"; 10 Rail 16" x 2"
                    Panelling     | 144     | 36     | 3/4    | 8 Stile 36" x 3 1/2"; 14 Rail 17 7/16" x 3 1/2"; 7 Panel 29 5/8" x 17 5/16"
                    Mantel        | 72      | 54     | 8      | 1 Shelf 72" x 8"; 1 Frieze 68" x 9"; 2 Pilaster front 43 15/16" x 7"; 4 Pilaster side 43 15/16" x 5 1/4"
                    Counter       | 150     | 1 1/2  | 25     | 2 Panel 75" x 26 1/2"
                    Stair tread   | 38 1/4  | 1 1/16 | 11 1/4 | 1 Tread 38 3/4" x 12 1/2"; 1 Riser 38 3/4" x 7 1/2"
                    Skirt board   | 172     | 11 1/2 | 3/4    | 2 Skirt board 88" x 12 1/4"; 2 Cap 88" x 1 1/8"
                    Newel cap     | 5 1/2   | 2 3/4  | 5 1/2  | 3 Cap layer 6" x 6"; 2 Moulding, sides 6 1/2" x 3/4"
                    Ladder        | 17 1/2  | 96     | 3      | 2 Side 99 7/16" x 3 1/4"; 7 Tread 16 1/4" x 3 1/2"
                    Trim          | 58 ft   | 3 1/2  | 1 1/4  | 4 Length of trim 175" x 3 1/2"
                    """)
    void areAsOneWouldReckonThem(String kind, String width, String height, String depth, String parts) {
        Worked worked = worked(kind, width, height, depth);

        assertThat(worked.problems()).isEmpty();
        assertThat(worked.parts())
                .extracting(part -> part.quantity() + " " + part.name() + " "
                        + part.length().formatInches() + " x " + part.width().formatInches())
                .contains(parts.split("; "));
        assertThat(worked.parts())
                .allMatch(part -> part.width().units() <= inches("60").units());
    }

    @Test
    void aBookcaseOfOneCaseHasNoMiddleStile() {
        assertThat(worked("Bookcase", "34 1/8", "92 3/4", "13 1/2").parts())
                .extracting(PartDetails::name)
                .doesNotContain("Middle stile");
    }

    /** The face frame is as wide as the piece: the stiles and the rails between them, to the rounding of each rail. */
    @ParameterizedTest
    @CsvSource({
        "Bookcase, 34 1/8, 92 3/4, 13 1/2",
        "Bookcase, 120, 96, 12",
        "Window seat, 81 5/8, 18 1/4, 22",
        "Locker bank, 93 3/4, 84, 17 1/2",
        "Pantry case, 101 1/2, 94, 18",
        "Drawer bank, 96 3/8, 61 1/2, 34"
    })
    void framesFillTheWidth(String kind, String width, String height, String depth) {
        List<PartDetails> parts = worked(kind, width, height, depth).parts();
        long stiles = parts.stream()
                .filter(part -> part.name().endsWith("er stile") || part.name().equals("Middle stile"))
                .mapToLong(part -> part.quantity() * part.width().units())
                .sum();
        PartDetails rail = parts.stream()
                .filter(part -> part.name().equals("Rail"))
                .findFirst()
                .orElseThrow();
        long bays = parts.stream()
                        .filter(part -> part.name().equals("Middle stile"))
                        .mapToLong(PartDetails::quantity)
                        .sum()
                + 1;
        long frame = stiles + bays * rail.length().units();

        assertThat(inches(width).units() - frame)
                .isBetween(0L, bays * inches("1/16").units());
    }

    private static List<String> catalogue() throws IOException {
        return column("piece_kinds.csv")
                .filter(kind -> !kind.equals("*"))
                .distinct()
                .toList();
    }

    private static Stream<String> column(String file) throws IOException {
        try (InputStream in = ShippedRecipesTest.class.getResourceAsStream("/db/catalog/" + file)) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(line -> line.split(",", 2)[0]);
        }
    }

    /** A kind that is new in the starting catalogue is not left without a word about its parts. */
    @Test
    void everyKindOfTheCatalogueHasSomeAndOnlyTheCustomPieceIsListedByHand() throws IOException {
        assertThat(column("recipes/index.csv")).containsExactlyInAnyOrderElementsOf(catalogue());
        for (String kind : catalogue()) {
            boolean byHand =
                    RecipeReader.read(ShippedRecipes.of(kind)).recipe().parts().isEmpty();
            assertThat(byHand).as(kind).isEqualTo(kind.equals("Custom piece"));
        }
    }

    @Test
    void nameTaskKindsAndMaterialsOfTheCatalogue() throws IOException {
        List<String> tasks = column("task_kinds.csv").toList();
        List<String> materials = column("materials.csv").toList();
        for (String kind : catalogue()) {
            Recipe recipe = RecipeReader.read(ShippedRecipes.of(kind)).recipe();
            assertThat(tasks)
                    .as(kind)
                    .containsAll(
                            recipe.tasks().stream().map(Recipe.TaskRule::code).toList());
            assertThat(materials)
                    .as(kind)
                    .containsAll(recipe.slots().stream().map(Recipe.Slot::code).toList());
        }
    }

    @ParameterizedTest
    @MethodSource("catalogue")
    void haveNoFormulaThatCannotBeWorkedOut(String kind) {
        RecipeReader.Read read = RecipeReader.read(ShippedRecipes.of(kind));
        Worked worked = worked(kind, "72", "60", "16");
        Map<String, org.tallywright.takeoff.formula.Amount> totals =
                Workings.totals(read.recipe(), worked.settings(), worked.parts());

        assertThat(ShippedRecipes.of(kind)).contains("Common practice, no source");
        assertThat(worked.problems()).isEmpty();
        read.recipe().tasks().forEach(task -> {
            Amount one = task.formula().value(totals);
            assertThat(task.together(totals, Map.of("sum", one, "before", one, "job", one)))
                    .isNotNull();
        });
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

    private static double supply(String kind, String slot, String width, String height, String depth) {
        Recipe recipe = RecipeReader.read(ShippedRecipes.of(kind)).recipe();
        Worked worked = worked(kind, width, height, depth);
        Map<String, Amount> totals = Workings.totals(recipe, worked.settings(), worked.parts());
        return recipe.supplies().stream()
                .filter(supply -> supply.slot().equals(slot))
                .mapToDouble(supply -> supply.formula().value(totals).decimal().doubleValue())
                .sum();
    }

    private static double task(String kind, String code, String width, String height, String depth) {
        Recipe recipe = RecipeReader.read(ShippedRecipes.of(kind)).recipe();
        Worked worked = worked(kind, width, height, depth);
        Map<String, Amount> totals = Workings.totals(recipe, worked.settings(), worked.parts());
        return recipe.tasks().stream()
                .filter(task -> task.code().equals(code))
                .mapToDouble(task -> task.formula().value(totals).decimal().doubleValue())
                .sum();
    }

    /** Four rows of holes up a case of 29 3/4; a drawer of 21 by 33 1/2 has its groove all round. */
    @Test
    void looseShelvesOfABaseCaseHavePinsAndHoles() {
        assertThat(supply("Base case", "pins", "36", "34 1/2", "24")).isEqualTo(4);
        assertThat(task("Base case", "shelf_make", "36", "34 1/2", "24")).isEqualTo(1);
        assertThat(task("Base case", "dado_groove", "36", "34 1/2", "24"))
                .isEqualTo(inches("228").units());
    }

    /** A door of 42 1/8 in takes two pairs, as on a tall case. */
    @Test
    void highDoorsTakeTwoPairsOfHinges() {
        assertThat(supply("Pantry case", "hinge", "30", "94", "24")).isEqualTo(8);
        assertThat(supply("Pantry case", "hinge", "30", "84", "24")).isEqualTo(4);
    }

    /** A drawer is as long as its slides; those of the length that fits are bought, and none where none fits. */
    @ParameterizedTest
    @CsvSource({"24, 21", "22 1/2, 21", "22, 18", "18, 15", "16, 12", "13 1/2, 12"})
    void slidesAreAsLongAsTheDrawers(String depth, String length) {
        for (String kind : List.of("Base case", "Drawer bank", "Pantry case")) {
            Worked worked = worked(kind, "30", "40", depth);
            assertThat(worked.problems()).as(kind).isEmpty();
            PartDetails side = worked.parts().stream()
                    .filter(part -> List.of("Drawer side", "Tray side").contains(part.name()))
                    .findFirst()
                    .orElseThrow();
            assertThat(side.length()).as(kind).isEqualTo(inches(length));
            for (String each : List.of("21", "18", "15", "12")) {
                String slot = each.equals("21") ? "slides" : "slides_" + each;
                double pairs = each.equals(length) ? side.quantity() / 2.0 : 0;
                assertThat(supply(kind, slot, "30", "40", depth))
                        .as(kind + slot)
                        .isEqualTo(pairs);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"Base case", "Drawer bank", "Pantry case"})
    void aCaseTooShallowForDrawersIsToldSo(String kind) {
        assertThat(worked(kind, "30", "40", "13").problems())
                .extracting(RecipeError::words)
                .anyMatch(words -> words.contains(" side: comes to ") && words.contains("cannot be cut"));
    }

    /** Base case: sides 2 x 29 3/4, bottom 34 1/2, shelf 34 3/8. Whatever is banded is bought. */
    @Test
    void edgeBandIsBoughtForWhatIsBanded() throws IOException {
        assertThat(supply("Base case", "band", "36", "34 1/2", "24"))
                .isEqualTo(inches("128 3/8").units());
        for (String kind : catalogue()) {
            double banded = worked(kind, "72", "60", "16").parts().stream()
                    .mapToDouble(part -> part.quantity()
                            * (part.longEdges() * part.length().units()
                                    + part.shortEdges() * part.width().units()))
                    .sum();
            assertThat(supply(kind, "band", "72", "60", "16")).as(kind).isEqualTo(banded);
        }
    }

    /** One species: top and legs of 5/4 that planes to 1 in and to two layers of 1 1/16, aprons of 4/4. */
    @Test
    void aDeskIsOfOneWood() {
        assertThat(RecipeReader.read(ShippedRecipes.of("Desk")).recipe().slots())
                .extracting(Recipe.Slot::code)
                .containsExactly("red_oak_54", "red_oak_44", "red_oak_54");
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
