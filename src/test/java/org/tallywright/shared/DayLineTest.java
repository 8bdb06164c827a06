package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DayLineTest {
    private static String told(DayLine.Part part) {
        return part.words() + " | "
                + (part.hourClass() == null ? "-" : part.hourClass().code()) + " | "
                + part.time().hours() + " | " + (part.note() == null ? "-" : part.note());
    }

    @Test
    void readsADay() {
        assertThat(DayLine.parse("glue-up 2h30, sanding 45m, rework 20m door rail")
                        .parts())
                .extracting(DayLineTest::told)
                .containsExactly(
                        "glue-up | - | 2 h 30 | -", "sanding | - | 45 min | -", " | rework | 20 min | door rail");
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            rip 4/4 oak 2h;rip 4/4 oak | - | 2 h | -
            drawer 3 1.5;drawer 3 | - | 1 h 30 | -
            sanding 2,5;sanding | - | 2 h 30 | -
            sanding 1 1/2;sanding | - | 1 h 30 | -
            finish 2 1/2 h;finish | - | 2 h 30 | -
            glue-up: 2h;glue-up | - | 2 h | -
            sanding 2h - second coat;sanding | - | 2 h | second coat
            scribe 1 h 15 min north wall;scribe | - | 1 h 15 | north wall
            sanding 2 h 30;sanding | - | 2 h 30 | -
            sanding 2h 30 - north wall;sanding | - | 2 h 30 | north wall
            8-12 framing; | - | 4 h | framing
            mill 8-12 + 1-3 oak;mill | - | 6 h | oak
            travel 30m; | travel | 30 min | -
            Supply run 1h; | supply run | 1 h | -
            call back 45m hinge; | call-back | 45 min | hinge
            rework sanding 20m;sanding | rework | 20 min | -
            set up table saw 15 min;table saw | set-up | 15 min | -
            office shelves 2h;office shelves | - | 2 h | -
            travel case 2h;travel case | - | 2 h | -
            45m; | - | 45 min | -
            caf\u00e9 bench \ud83d\ude80 45m;caf\u00e9 bench \ud83d\ude80 | - | 45 min | -
            """)
    void readsOnePart(String typed, String told) {
        assertThat(told(DayLine.Part.parse(typed)).strip()).isEqualTo(told.strip());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            sanding | How long did "sanding" take? Write the time behind it, like 45m or 2h30.
            sanding 2 doors | How long did "sanding 2 doors" take? Write the time behind it, like 45m or 2h30.
            rip 4/4 oak | How long did "rip 4/4 oak" take? Write the time behind it, like 45m or 2h30.
            sand 2h rework 20m | "sand 2h rework 20m" holds two times; put a comma between the entries.
            sanding 2h 12 doors | "2h 12 doors" can be read in two ways; write 2h12, or put a dash before the note.
            sanding 26 | 26 is more than a day; did you mean 2.6?
            '' | Write what you did and for how long, such as: sanding 45m, glue-up 2h30.
            """)
    void refusesInWords(String typed, String sentence) {
        assertThatExceptionOfType(NotUnderstood.class)
                .isThrownBy(() -> DayLine.parse(typed))
                .withMessage(sentence);
    }

    @Test
    void splitsAtCommasThatAreNotDecimal() {
        assertThat(DayLine.split("a 2,5,b 1h;c 3\n, ,d 4m,2h e"))
                .containsExactly("a 2,5", "b 1h", "c 3", "d 4m", "2h e");
    }

    @Test
    void refusesMoreThanADayHolds() {
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> DayLine.split("a 1m,".repeat(41)));
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> DayLine.split("x".repeat(2001)));
    }
}
