package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.Tries;

class LoggedTimePropertiesTest {
    @Test
    void readsBackEveryRangeItWrites() {
        Tries.of(2000, draw -> {
            int from = draw.between(0, 1439);
            int to = draw.between(from + 1, 1440);
            ClockSpan span = new ClockSpan(LocalTime.MIN.plusMinutes(from), LocalTime.MIN.plusMinutes(to));
            LoggedTime written = LoggedTime.parse(new LoggedTime(span.hours(), List.of(span), null).typed());
            assertThat(written.hours()).isEqualTo(new Hours(to - from));
            assertThat(written.start()).isEqualTo(span.start());
            assertThat(written.end()).isEqualTo(span.end());
        });
    }

    @Test
    void whateverItReadsIsAPartOfADayAndReadsBack() {
        Tries.of(3000, draw -> readsBack(Strange.text(draw)));
    }

    private static void readsBack(String typed) {
        LoggedTime time;
        try {
            time = LoggedTime.parse(typed);
        } catch (NotUnderstood e) {
            return;
        }
        assertThat(time.hours().minutes()).isBetween(1, 1440);
        LoggedTime again = LoggedTime.parse(time.typed());
        assertThat(again.hours()).isEqualTo(time.hours());
        assertThat(again.spans()).isEqualTo(time.spans());
    }
}
