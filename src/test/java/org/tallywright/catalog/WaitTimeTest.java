package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.shared.NotUnderstood;

class WaitTimeTest {
    @ParameterizedTest
    @CsvSource({"30m, 30", "4 h, 240", "1 h 30, 90", "3 days, 4320", "1 day, 1440", "'1,5 d', 2160", "24, 1440"})
    void readsWhatPeopleWrite(String typed, int minutes) {
        assertThat(WaitTime.minutes(typed)).isEqualTo(minutes);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0", "soon", "-4 h", "400 days", "0 days", "99999 h"})
    void refusesWhatIsNoWait(String typed) {
        assertThatThrownBy(() -> WaitTime.minutes(typed)).isInstanceOf(NotUnderstood.class);
    }

    @Test
    void readsBackWhatItWrites() {
        for (int minutes : new int[] {1, 30, 90, 240, 1440, 2880, 7200, 3000}) {
            assertThat(WaitTime.minutes(WaitTime.words(minutes))).isEqualTo(minutes);
        }
        assertThat(WaitTime.words(7200)).isEqualTo("5 days");
        assertThat(WaitTime.words(960)).isEqualTo("16 h");
    }
}
