package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.LocalTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LoggedTimeTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            8-12;4 h (08:00 to 12:00)
            8:00-12:15;4 h 15 (08:00 to 12:15)
            8.00-12.15;4 h 15 (08:00 to 12:15)
            7:30am-noon;4 h 30 (07:30 to 12:00)
            1pm-3:30pm;2 h 30 (13:00 to 15:30)
            7:30a-3p;7 h 30 (07:30 to 15:00)
            7:30 a.m. - 3 p.m.;7 h 30 (07:30 to 15:00)
            from 8 to 12;4 h (08:00 to 12:00)
            8 until noon;4 h (08:00 to 12:00)
            8\u201312;4 h (08:00 to 12:00)
            8-4;8 h (08:00 to 16:00)
            7:30-3;7 h 30 (07:30 to 15:00)
            12:30-1:15;45 min (12:30 to 13:15)
            1-3:30;2 h 30 (13:00 to 15:30)
            4-5:30;1 h 30 (16:00 to 17:30)
            5-7:30;2 h 30 (05:00 to 07:30)
            01:00-03:30;2 h 30 (01:00 to 03:30)
            1-3pm;2 h (13:00 to 15:00)
            10-2pm;4 h (10:00 to 14:00)
            noon-1;1 h (12:00 to 13:00)
            7pm-9;2 h (19:00 to 21:00)
            13:00-17:30;4 h 30 (13:00 to 17:30)
            8pm-midnight;4 h (20:00 to 00:00)
            20:00-24:00;4 h (20:00 to 00:00)
            12am-1am;1 h (00:00 to 01:00)
            0:00-24:00;24 h (00:00 to 00:00)
            8-12 + 12:30-4;7 h 30 (08:00 to 12:00, 12:30 to 16:00)
            8-12 and 1-4;7 h (08:00 to 12:00, 13:00 to 16:00)
            2h + 45m;2 h 45
            2.33;2 h 20 (rounded to the minute)
            2h30;2 h 30
            """)
    void readsWhatPeopleType(String typed, String understood) {
        assertThat(LoggedTime.parse(typed).understood()).isEqualTo(understood);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            22:00-02:00    | 22:00 to 02:00 ends before it starts; log the time after midnight on its own date.
            13:00-12:30    | 13:00 to 12:30 ends before it starts; log the time after midnight on its own date.
            9am-9am        | 09:00 to 09:00 ends before it starts; log the time after midnight on its own date.
            8-12 + 11-1    | 08:00 to 12:00 and 11:00 to 13:00 overlap.
            8-12 + 45m     | Write clock times or lengths of time in one box, not both.
            20h + 5h       | "20h + 5h" adds up to more than a day.
            25:00-26:00    | "25:00-26:00" holds a clock time that does not exist.
            8:75-9         | "8:75-9" holds a clock time that does not exist.
            13pm-14pm      | "13pm-14pm" holds a clock time that does not exist.
            8-12h          | "8-12h" is not a length of time; write it like 2:30, 2.5, 2h30 or 45m.
            26             | 26 is more than a day; did you mean 2.6?
            2h +           | Write how long it took, such as 2:30, 2.5 or 45m.
            """)
    void refusesInWords(String typed, String sentence) {
        assertThatExceptionOfType(NotUnderstood.class)
                .isThrownBy(() -> LoggedTime.parse(typed))
                .withMessage(sentence);
    }

    @Test
    void keepsStartAndEndOfOneRangeOnly() {
        LoggedTime one = LoggedTime.parse("8-4");
        assertThat(one.start()).isEqualTo(LocalTime.of(8, 0));
        assertThat(one.end()).isEqualTo(LocalTime.of(16, 0));
        LoggedTime two = LoggedTime.parse("8-12 + 1-4");
        assertThat(two.start()).isNull();
        assertThat(two.end()).isNull();
        assertThat(two.spans()).hasSize(2);
        assertThat(LoggedTime.parse("2h").start()).isNull();
    }

    @Test
    void spansThatTouchDoNotOverlap() {
        ClockSpan morning = new ClockSpan(LocalTime.of(8, 0), LocalTime.NOON);
        assertThat(morning.overlaps(new ClockSpan(LocalTime.NOON, LocalTime.of(13, 0))))
                .isFalse();
        assertThat(new ClockSpan(LocalTime.NOON, LocalTime.of(13, 0)).overlaps(morning))
                .isFalse();
        assertThat(morning.overlaps(new ClockSpan(LocalTime.of(11, 59), LocalTime.of(13, 0))))
                .isTrue();
        assertThat(new ClockSpan(LocalTime.of(20, 0), LocalTime.MIDNIGHT)
                        .overlaps(new ClockSpan(LocalTime.MIDNIGHT, LocalTime.of(1, 0))))
                .isFalse();
    }
}
