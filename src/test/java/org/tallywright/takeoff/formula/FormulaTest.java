package org.tallywright.takeoff.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.Tries;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;

class FormulaTest {
    private static final Map<String, Amount> KNOWN = Map.of(
            "width", inches("34 1/8"),
            "height", inches("92 3/4"),
            "depth", inches("13 1/2"),
            "dado", inches("1/4"),
            "shelves", Amount.number(5));

    private static Amount inches(String typed) {
        return Amount.length(Length.parse(typed, Units.IMPERIAL).units());
    }

    /** A shelf between two sides of 3/4 in, let in by a dado at each end: 34 1/8 - 1 1/2 + 1/2 = 33 1/8. */
    @ParameterizedTest
    @CsvSource({
        "width - 2 * 3/4 in + 2 * dado, 33 1/8",
        "'(width - 2 * 3/4 in) / 2', 16 5/16",
        "'min(width, depth) - 1 1/2 in', 12",
        "'down((width - 1 in) / 3, 1/16 in)', 11",
        "'if(width > 36 in, 1 in, 3/4 in)', 3/4",
        "'max(1 ft, depth)', 13 1/2",
        "-(-depth), 13 1/2",
        "25.4 mm, 1"
    })
    void worksOutLengthsExactly(String formula, String expected) {
        assertThat(Formula.parse(formula).value(KNOWN, 1)).isEqualTo(inches(expected));
    }

    @ParameterizedTest
    @CsvSource({
        "shelves + 2, 7",
        "up(height / 13 in), 8",
        "'max(1, down(height / 14 in) - 1)', 5",
        "'if(shelves >= 5, 2 * shelves, 0)', 10",
        "3 / 4 * 4, 3",
        "2 + 3 * 4 - 6 / 3, 12"
    })
    void worksOutNumbers(String formula, long expected) {
        assertThat(Formula.parse(formula).value(KNOWN, 0)).isEqualTo(Amount.number(expected));
    }

    @Test
    void lengthTimesLengthIsAnArea() {
        assertThat(Formula.parse("width * height").value(KNOWN).power()).isEqualTo(2);
        assertThat(Formula.parse("width * height / depth").value(KNOWN).kind()).isEqualTo("a length");
    }

    @ParameterizedTest
    @CsvSource({
        "width +, 8, stops here",
        "width height, 7, too much here",
        "(width - 1 in, 14, closing bracket",
        "width - 1.5, 7, do not go together",
        "widht * 2, 1, is not known here",
        "2 * / 3, 5, missing before",
        "width / (shelves - 5), 7, divides by nothing",
        "sqrt(2), 1, use min",
        "up(width), 1, needs a step",
        "'min(width, 3)', 1, of one kind",
        "'if(1, 2)', 1, three",
        "width # 2, 7, means nothing",
        "3/5 in, 1, not one of a tape",
        "up, 1, brackets"
    })
    void tellsWhereAFormulaIsWrong(String formula, int position, String words) {
        assertThatThrownBy(() -> Formula.parse(formula).value(KNOWN)).isInstanceOfSatisfying(FormulaError.class, e -> {
            assertThat(e.position()).isEqualTo(position);
            assertThat(e.sentence()).contains(words);
        });
    }

    /** A length of 17 large factors below fits what is kept; to a step of a sixteenth it does not. */
    @Test
    void aStepThatBecomesTooLargeIsRefused() {
        String length = "1 mm" + " / 999999937".repeat(17);
        assertThat(Formula.parse(length).value(KNOWN, 1).signum()).isPositive();
        assertThatThrownBy(() ->
                        Formula.parse("1 in + up(" + length + ", 1/16 in)").value(KNOWN))
                .isInstanceOfSatisfying(FormulaError.class, e -> {
                    assertThat(e.position()).isEqualTo(8);
                    assertThat(e.sentence()).contains("becomes too large");
                });
    }

    @ParameterizedTest
    @ValueSource(strings = {"width", "width * height"})
    void refusesTheWrongKind(String formula) {
        assertThatThrownBy(() -> Formula.parse(formula).value(KNOWN, 0)).isInstanceOf(FormulaError.class);
    }

    /** Whatever is typed, it is worked out or refused, soon and by a sentence. */
    @Test
    void alwaysEnds() {
        Tries.of(3_000, draw -> {
            String typed = draw.oneOf(
                    () -> draw.anyText(120),
                    () -> draw.text("wdh()+-*/,.<>=0123456789 inup\"", 300),
                    () -> "(".repeat(299),
                    () -> "9*".repeat(140) + "9");
            try {
                Formula.parse(typed).value(KNOWN);
            } catch (FormulaError e) {
                assertThat(e.position()).isBetween(1, typed.length() + 1);
            }
        });
    }
}
