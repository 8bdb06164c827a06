package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypedTest {
    @Test
    void putsALineInOrder() {
        assertThat(Typed.line("  window \t seat,\n north\u00a0bay ", 40)).isEqualTo("window seat, north bay");
        assertThat(Typed.line("\ud83d\ude80\ud83d\ude80", 2)).isEqualTo("\ud83d\ude80\ud83d\ude80");
        assertThat(Typed.line("   ", 5)).isEmpty();
    }

    @Test
    void keepsTheLinesOfABlock() {
        assertThat(Typed.block("\r\nside door \r\n\r\nboots off\r", 40)).isEqualTo("side door\n\nboots off");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a\0b", "a\u0007b", "a\u202eb", "a\ud83d", "a\uffff"})
    void refusesWhatCannotBePrinted(String typed) {
        assertThatExceptionOfType(Refused.class).isThrownBy(() -> Typed.line(typed, 40));
        assertThatExceptionOfType(Refused.class).isThrownBy(() -> Typed.block(typed, 40));
    }

    @Test
    void saysByHowMuchItIsTooLong() {
        assertThatExceptionOfType(Refused.class)
                .isThrownBy(() -> Typed.line("x".repeat(123), 120))
                .withMessage("This is 3 characters too long; there is room for 120.")
                .satisfies(e -> assertThat(e.field()).isNull())
                .satisfies(e -> assertThat(e.at("name").field()).isEqualTo("name"));
    }

    @Test
    void asksForWhatIsMissing() {
        assertThatExceptionOfType(Refused.class).isThrownBy(() -> Typed.requiredLine(" \n", 9));
    }
}
