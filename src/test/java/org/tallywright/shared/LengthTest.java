package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LengthTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            31 5/8          | 31 5/8"
            31-5/8"         | 31 5/8"
            31 5/8 in       | 31 5/8"
            31 ⅝            | 31 5/8"
            31⅝″            | 31 5/8"
            4' 3-7/8"       | 51 7/8"
            4'-3 7/8"       | 51 7/8"
            4' - 3 7/8"     | 51 7/8"
            4'3-7/8         | 51 7/8"
            4ft 3 7/8in     | 51 7/8"
            4 feet 3 inches | 51"
            4′ 3⅞″          | 51 7/8"
            4’ 3 ½”         | 51 1/2"
            4'              | 48"
            4.5'            | 54"
            4' 3.5"         | 51 1/2"
            5''             | 5"
            ½               | 1/2"
            7/8             | 7/8"
            63/64           | 63/64"
            2/4             | 1/2"
            12.5"           | 12 1/2"
            12,5"           | 12 1/2"
            12.             | 12"
            .5              | 1/2"
            0               | 0"
            25.4 mm         | 1"
            2.54cm          | 1"
            0.3048 m        | 12"
            0,3048 metres   | 12"
            """)
    void readsWhatPeopleType(String typed, String inches) {
        assertThat(Length.parse(typed, Units.IMPERIAL).formatInches()).isEqualTo(inches);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            803    | 803 mm
            803.5  | 803.5 mm
            80.3cm | 803 mm
            1.2 m  | 1200 mm
            1"     | 25.4 mm
            1/2    | 12.7 mm
            31 5/8 | ≈ 803.275 mm
            4'     | 1219.2 mm
            """)
    void readsABareNumberAsMillimetresInAMetricShop(String typed, String millimetres) {
        assertThat(Length.parse(typed, Units.METRIC).format(Units.METRIC)).isEqualTo(millimetres);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            1,203 m   | "1,203 m" can be read in two ways; write 1203 or 1.203.
            1/3       | In "1/3" the fraction is not one of a tape; use halves, quarters and so on to 64ths.
            31 9/8    | In "31 9/8" the fraction is not one of a tape; use halves, quarters and so on to 64ths.
            1/0       | In "1/0" the fraction is not one of a tape; use halves, quarters and so on to 64ths.
            4' 15"    | In "4' 15"" the inches after feet stay under 12.
            4' 12"    | In "4' 12"" the inches after feet stay under 12.
            4.5' 3"   | In "4.5' 3"" the feet before inches must be whole.
            -1/8      | A length cannot be negative here.
            4 3 7/8   | "4 3 7/8" is not a length; write it like 31 5/8, 4' 3-7/8" or 803 mm.
            31 5/8 mm | "31 5/8 mm" is not a length; write it like 31 5/8, 4' 3-7/8" or 803 mm.
            5 kg      | "5 kg" is not a length; write it like 31 5/8, 4' 3-7/8" or 803 mm.
            101 m     | "101 m" is longer than 100 m; check the unit.
            ``        | Write a length, such as 31 5/8, 4' 3-7/8" or 803 mm.
            """)
    void refusesInWords(String typed, String sentence) {
        assertThatExceptionOfType(NotUnderstood.class)
                .isThrownBy(() -> Length.parse(typed, Units.IMPERIAL))
                .withMessage(sentence);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            11 63/64  | 11 63/64"
            12        | 1'
            12 1/64   | 1' 1/64"
            51 7/8    | 4' 3 7/8"
            803 mm    | ≈ 31.6142"
            12.55     | ≈ 12.55"
            """)
    void writesFeetAndInchesAndMarksWhatIsNoWholeSixtyFourth(String typed, String written) {
        assertThat(Length.parse(typed, Units.IMPERIAL).format(Units.IMPERIAL)).isEqualTo(written);
    }

    @Test
    void keepsBothSystemsExact() {
        assertThat(Length.ofSixtyFourths(1).units()).isEqualTo(127);
        assertThat(Length.ofMillimetres(new BigDecimal("0.1")).units()).isEqualTo(32);
        assertThat(Length.ofInches(BigDecimal.ONE).millimetres()).isEqualByComparingTo("25.4");
    }

    @Test
    void addsSubtractsAndMultipliesExactly() {
        Length bay = Length.parse("31 5/8", Units.IMPERIAL);
        assertThat(bay.times(3).format(Units.IMPERIAL)).isEqualTo("7' 10 7/8\"");
        assertThat(bay.minus(Length.parse("32", Units.IMPERIAL)).formatInches()).isEqualTo("-3/8\"");
        assertThat(bay.plus(Length.parse("1 mm", Units.METRIC)).millimetres()).isEqualByComparingTo("804.275");
    }

    @Test
    void readsASignOnlyWhereAsked() {
        assertThat(Length.parseSigned("-1/8", Units.IMPERIAL).formatInches()).isEqualTo("-1/8\"");
        assertThat(Length.parseSigned("\u2212 3 mm", Units.IMPERIAL).format(Units.METRIC))
                .isEqualTo("-3 mm");
        assertThat(Length.parseSigned("1/8", Units.IMPERIAL).formatInches()).isEqualTo("1/8\"");
    }

    @Test
    void aSizeIsMoreThanNothing() {
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Length.parseSize("0", Units.IMPERIAL));
    }

    @Test
    void measuresAreasAndRuns() {
        Length width = Length.parse("48", Units.IMPERIAL);
        Length height = Length.parse("96", Units.IMPERIAL);
        assertThat(width.area(height, Units.IMPERIAL)).isEqualTo(Quantity.of("32"));
        assertThat(width.area(height, Units.METRIC)).isEqualTo(Quantity.of("2.9729"));
        assertThat(height.run(Units.IMPERIAL)).isEqualTo(Quantity.of("8"));
        assertThat(height.run(Units.METRIC)).isEqualTo(Quantity.of("2.4384"));
    }
}
