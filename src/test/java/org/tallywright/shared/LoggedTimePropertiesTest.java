package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class LoggedTimePropertiesTest {
    @Provide
    Arbitrary<String> strange() {
        return Strange.text();
    }

    @Property
    void readsBackEveryRangeItWrites(
            @ForAll @IntRange(max = 1439) int from, @ForAll @IntRange(min = 1, max = 1440) int to) {
        Assume.that(from < to);
        ClockSpan span = new ClockSpan(LocalTime.MIN.plusMinutes(from), LocalTime.MIN.plusMinutes(to));
        LoggedTime written = LoggedTime.parse(new LoggedTime(span.hours(), java.util.List.of(span), null).typed());
        assertThat(written.hours()).isEqualTo(new Hours(to - from));
        assertThat(written.start()).isEqualTo(span.start());
        assertThat(written.end()).isEqualTo(span.end());
    }

    @Property(tries = 3000)
    void whateverItReadsIsAPartOfADayAndReadsBack(@ForAll("strange") String typed) {
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
