package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HoursTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            2;120
            2.5;150
            2,5;150
            2:30;150
            2h30;150
            2:59;179
            2 h 30;150
            2 h 05;125
            45m;45
            45 min;45
            1h;60
            90m;90
            .5;30
            2 1/2;150
            2-1/2;150
            2\u00bd;150
            1/4 h;15
            2 h and 30 min;150
            2 hours;120
            2hrs 15mins;135
            24;1440
            1.0;60
            0:45;45
            0.1;6
            2\u00a0h\u00a030;150
            '  2.50 ';150
            1 HR;60
            2 Hours 30 Minutes;150
            """)
    void readsWhatPeopleType(String typed, int minutes) {
        assertThat(Hours.parse(typed)).isEqualTo(new Hours(minutes));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            26    | 26 is more than a day; did you mean 2.6?
            90    | 90 is more than a day; did you mean 90m?
            230   | 230 is more than a day; did you mean 2:30?
            24.01 | "24.01" is more than a day; one entry holds up to 24 hours.
            24:01 | "24:01" is more than a day; one entry holds up to 24 hours.
            0     | Nothing was worked in 0 hours; leave the box empty instead.
            0:00  | Nothing was worked in 0 hours; leave the box empty instead.
            -2    | Hours cannot be negative.
            2h75  | In "2h75" the minutes after the hours go up to 59.
            2:60  | In "2:60" the minutes after the hours go up to 59.
            0.001 | That is less than a minute.
            soon  | "soon" is not a length of time; write it like 2:30, 2.5, 2h30 or 45m.
            1/0   | "1/0" is not a length of time; write it like 2:30, 2.5, 2h30 or 45m.
            2h30m5s | "2h30m5s" is not a length of time; write it like 2:30, 2.5, 2h30 or 45m.
            ''    | Write how long it took, such as 2:30, 2.5 or 45m.
            """)
    void refusesInWords(String typed, String sentence) {
        assertThatExceptionOfType(NotUnderstood.class)
                .isThrownBy(() -> Hours.parse(typed))
                .withMessage(sentence);
    }

    @Test
    void readsTotalsOfJobsBeyondADayAndNothing() {
        assertThat(Hours.parseTotal("142.97")).isEqualTo(new Hours(8578));
        assertThat(Hours.parseTotal("0")).isEqualTo(Hours.ZERO);
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> Hours.parseTotal("100001"));
    }

    @Test
    void roundsPartsOfAMinuteHalfUp() {
        assertThat(Hours.of(new BigDecimal("0.225"))).isEqualTo(new Hours(14)); // 13.5 minutes
        assertThat(Hours.of(new BigDecimal("0.2249"))).isEqualTo(new Hours(13));
    }

    @Test
    void addsPastADayAndSubtractsBelowZero() {
        assertThat(new Hours(1400).plus(new Hours(100))).hasToString("25 h");
        assertThat(new Hours(30).minus(new Hours(95))).hasToString("-1 h 05");
    }

    @Test
    void givesDecimalHoursForExports() {
        assertThat(new Hours(140).decimal()).isEqualTo("2.3333");
    }
}
