package org.tallywright.materials;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.Yield;

class UsedLineTest {
    private static final List<MaterialCard> CATALOG = List.of(
            card("Birch plywood, 1/2 in, 60 x 60", "sheet"),
            card("White oak veneer plywood, 3/4 in, 48 x 96", "sheet"),
            card("White oak veneer plywood, 1/4 in, 48 x 96", "sheet"),
            card("Red oak, 5/4, surfaced", "bf"),
            card("Red oak, 4/4, surfaced", "bf"),
            card("Walnut, 4/4, rough", "bf"),
            card("Poplar crown, 4 1/4 in", "lf"),
            card("Concealed hinge", "each"),
            card("Clear oil", "qt"));

    private final UsedLine line = new UsedLine(CATALOG);

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2 sheets birch ply           | 2      | Birch plywood, 1/2 in, 60 x 60",
                "2sheets birch                | 2      | Birch plywood, 1/2 in, 60 x 60",
                "2 shets of birhc plywood     | 2      | Birch plywood, 1/2 in, 60 x 60",
                "birch ply 2 sheets           | 2      | Birch plywood, 1/2 in, 60 x 60",
                "2 birch ply                  | 2      | Birch plywood, 1/2 in, 60 x 60",
                "half a sheet birch           | 0.5    | Birch plywood, 1/2 in, 60 x 60",
                "11 bf walnut                 | 11     | Walnut, 4/4, rough",
                "11bf red oak 5/4             | 11     | Red oak, 5/4, surfaced",
                "12 1/2 board feet of walnut  | 12.5   | Walnut, 4/4, rough",
                "12½ bd ft walnut             | 12.5   | Walnut, 4/4, rough",
                "12,5 bd. ft walnut           | 12.5   | Walnut, 4/4, rough",
                "walnut 11.25 bf              | 11.25  | Walnut, 4/4, rough",
                "3/4 white oak ply 2 sheets   | 2      | 'White oak veneer plywood, 3/4 in, 48 x 96'",
                "2 sheets 1/4 white oak ply   | 2      | 'White oak veneer plywood, 1/4 in, 48 x 96'",
                "8 ft crown                   | 8      | 'Poplar crown, 4 1/4 in'",
                "6 linear feet poplar crown   | 6      | 'Poplar crown, 4 1/4 in'",
                "2 m crown                    | 6.5617 | 'Poplar crown, 4 1/4 in'",
                "4 hinges                     | 4      | Concealed hinge",
                "a hinge                      | 1      | Concealed hinge",
                "4 pcs hinge                  | 4      | Concealed hinge",
                "2 qts oil                    | 2      | Clear oil"
            })
    void hearsAQuantityItsUnitAndTheWordsOfTheMaterial(String typed, BigDecimal quantity, String name) {
        assertThat(line.read(typed)).singleElement().satisfies(heard -> {
            assertThat(heard.ask()).isNull();
            assertThat(heard.material().name()).isEqualTo(name.replace("'", ""));
            assertThat(heard.quantity().amount()).isEqualByComparingTo(quantity);
        });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "11 bf red oak       | More than one material is called so",
                "2 sheets white oak  | More than one material is called so",
                "11 walnut           | How many bf?",
                "2 5/4 red oak       | How many bf?",
                "2 sheets walnut     | kept by the bf",
                "3 bf crown          | kept by the lf",
                "2 sheets of mdf     | Which material",
                "5 sheets            | Which material",
                "birch ply           | How much of it?",
                "2 sheets birch 3 bf | Two quantities",
                "5 1/0 bf walnut     | not plain"
            })
    void asksWhereItWouldHaveToGuess(String typed, String sentence) {
        assertThat(line.read(typed)).singleElement().satisfies(heard -> {
            assertThat(heard.material()).isNull();
            assertThat(heard.ask()).contains(sentence);
        });
    }

    @Test
    void offersWhatMayBeMeant() {
        assertThat(line.read("11 bf red oak").get(0).perhaps())
                .extracting(MaterialCard::name)
                .containsExactly("Red oak, 5/4, surfaced", "Red oak, 4/4, surfaced");
    }

    @Test
    void partsAreSeparatedAsPeopleDoIt() {
        assertThat(line.read("2 sheets birch ply, 11,5 bf walnut; 4 hinges and 8 ft crown\n2 qt oil"))
                .extracting(UsedLine.Heard::ask, heard -> heard.quantity().toString())
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(null, "2"),
                        org.assertj.core.groups.Tuple.tuple(null, "11.5"),
                        org.assertj.core.groups.Tuple.tuple(null, "4"),
                        org.assertj.core.groups.Tuple.tuple(null, "8"),
                        org.assertj.core.groups.Tuple.tuple(null, "2"));
    }

    /** Whatever is typed is answered: by a material with a quantity above nothing, or by a question. */
    @RepeatedTest(40)
    void neverBreaksAndNeverGuesses(org.junit.jupiter.api.RepetitionInfo turn) {
        Random random = new Random(turn.getCurrentRepetition());
        String[] bits = {
            "2",
            "11",
            "1/2",
            "3 1/2",
            "½",
            "0",
            "-3",
            "1e9",
            "99999999",
            "sheets",
            "bf",
            "sq ft",
            "oak",
            "red",
            "walnut",
            "birch",
            "5/4",
            ",",
            ";",
            "and",
            " ",
            "x",
            "🚀",
            "m2",
            "/",
            ".",
            "half a",
            "(",
            "[a-z]",
            "\\",
            "%"
        };
        for (int n = 0; n < 100; n++) {
            String typed = IntStream.range(0, 1 + random.nextInt(9))
                    .mapToObj(i -> bits[random.nextInt(bits.length)] + (random.nextBoolean() ? " " : ""))
                    .reduce("", String::concat);
            assertThat(line.read(typed)).allSatisfy(heard -> {
                if (heard.ask() == null) {
                    assertThat(heard.material()).as(typed).isNotNull();
                    assertThat(heard.quantity()).as(typed).isNotNull();
                } else {
                    assertThat(heard.material()).as(typed).isNull();
                }
            });
        }
    }

    private static MaterialCard card(String name, String unit) {
        return new MaterialCard(
                UUID.randomUUID(),
                "",
                name,
                "",
                unit,
                new Yield(new BigDecimal("0.8")),
                BigDecimal.ONE,
                true,
                "",
                "",
                true,
                0);
    }
}
