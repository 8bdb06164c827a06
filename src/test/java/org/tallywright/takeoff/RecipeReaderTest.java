package org.tallywright.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.formula.FormulaError;

/** Formulas that are refused, and those that only fail once they are worked out. */
class RecipeReaderTest {
    @Test
    void aRuleIsNotNamedLikeTheSecondOfItsName() {
        String parts =
                "material | case | Case | x\npart | Shelf | case | 1 | width | depth\npart | Shelf | case | 1 | width |"
                        + " depth\npart | Shelf %s | case | 1 | width | depth";
        RecipeReader.Read read = RecipeReader.read(parts.formatted("#2"));
        assertThat(read.errors())
                .extracting(RecipeError::words)
                .containsExactly("Line 4, name: A name does not end in # and"
                        + " a number: parts of one name are told apart that way.");
        // Kept before this was refused, it is still read.
        assertThat(read.recipe().parts()).hasSize(3);
        assertThat(RecipeReader.read(parts.formatted("#2 long")).errors()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"sum", "before", "job"})
    void whatCountsTheJobIsNoSetting(String name) {
        RecipeReader.Read read = RecipeReader.read("setting | " + name + " | Something | 2");
        assertThat(read.errors())
                .extracting(RecipeError::words)
                .containsExactly("Line 1, name: \"" + name + "\" means something already.");
        assertThat(read.recipe().settings()).extracting(Recipe.Setting::name).containsExactly(name);
    }

    @Test
    void aLengthThatBecomesTooLargeIsAProblemOfItsLine() {
        RecipeReader.Read read = RecipeReader.read(
                "material | case | Case | x\npart | Shelf | case | 1 | 1 mm" + " / 999999937".repeat(17) + " | depth");
        assertThat(read.errors()).isEmpty();
        assertThat(Workings.of(
                                read.recipe(),
                                Workings.sizes(null, null, Length.parse("10", Units.IMPERIAL)),
                                Map.of(),
                                Map.of(),
                                Units.IMPERIAL)
                        .problems())
                .extracting(RecipeError::words)
                .containsExactly("Line 2, Shelf: At character 1: this becomes too large.");
    }

    /** A number of 508 bits is kept; a thousand times as much is not. */
    @Test
    void aTaskThatBecomesTooLargeForAllPiecesSaysSo() {
        Recipe recipe = RecipeReader.read("task | dry_fit | 1" + " * 999999937".repeat(17))
                .recipe();
        PieceFacts.Fact one = new PieceFacts.Fact(new UUID(0, 1), null, "Left", null, null, null, 1);
        PieceFacts.Fact many = new PieceFacts.Fact(new UUID(0, 2), null, "Right", null, null, null, 1_000);
        JobSums sums = new JobSums();
        sums.add(one, recipe, Map.of());
        sums.add(many, recipe, Map.of());
        assertThat(sums.of("dry_fit #1", one).get("job").signum()).isPositive();
        assertThatThrownBy(() -> sums.of("dry_fit #1", many))
                .isInstanceOf(FormulaError.class)
                .hasMessageContaining("becomes too large");
    }
}
