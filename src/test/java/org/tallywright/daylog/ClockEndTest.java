package org.tallywright.daylog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.shared.NotUnderstood;

class ClockEndTest {
    private static final ZoneId ZONE = ZoneId.of("America/New_York");

    @ParameterizedTest
    @CsvSource({
        "16:30, 530",
        "4:30pm, 530",
        "4:30, 530",
        "4pm, 500",
        "9:05, 85",
        "noon, 260",
        "midnight, 980",
        "2h30, 150",
        "45m, 45",
        "2.5, 150",
        "'2,5', 150",
        "2 h, 120"
    })
    void hearsATimeAndALengthAsTheSheetDoes(String typed, int minutes) {
        assertThat(after("2026-11-24T07:40", typed)).isEqualTo(minutes);
    }

    @ParameterizedTest
    @ValueSource(strings = {"4", "12", "", "late", "07:15 or so", "25:00", "16:75", "-2", "09:00-", "🚀"})
    void asksForWhatIsNotPlain(String typed) {
        assertThatThrownBy(() -> after("2026-11-24T07:40", typed)).isInstanceOf(NotUnderstood.class);
    }

    @Test
    void countsTheHourThatIsThereWhereClocksAreChanged() {
        assertThat(after("2026-03-08T01:30", "3:30")).as("put forward").isEqualTo(60);
        assertThat(after("2026-11-01T00:30", "2:30")).as("put back").isEqualTo(180);
        Instant second = Instant.parse("2026-11-01T06:10:00Z");
        assertThat(new ClockEnd(second, ZONE).read("1:40"))
                .as("the hour that comes twice, begun in its second half")
                .isEqualTo(second.plus(Duration.ofMinutes(30)));
    }

    private static long after(String local, String typed) {
        Instant start = LocalDateTime.parse(local).atZone(ZONE).toInstant();
        return Duration.between(start, new ClockEnd(start, ZONE).read(typed)).toMinutes();
    }
}
