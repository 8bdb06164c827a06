package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.tallywright.Tries;

/** Whatever is typed, a value either reads it or refuses it with a printable sentence; nothing else is thrown. */
class StrangeTextTest {
    private static final List<Consumer<String>> READERS = List.of(
            Money::of,
            UnitPrice::of,
            Hours::parse,
            Hours::parseTotal,
            LoggedTime::parse,
            t -> Length.parse(t, Units.IMPERIAL),
            t -> Length.parseSize(t, Units.METRIC),
            t -> Length.parseSigned(t, Units.IMPERIAL),
            Quantity::of,
            UnitHours::of,
            Percent::of,
            Margin::of,
            Markup::of,
            Yield::of,
            NetQuantity::of,
            GrossQuantity::of,
            Unit::of,
            HourClass::of,
            ShopAccount::of,
            ReportedSize::find,
            DayLine::parse,
            DayLine::split,
            DayLine.Part::parse);

    @Test
    void isReadOrRefusedInWords() {
        Tries.of(3000, draw -> readOrRefused(Strange.text(draw)));
    }

    private static void readOrRefused(String typed) {
        for (Consumer<String> reader : READERS) {
            try {
                reader.accept(typed);
            } catch (NotUnderstood e) {
                assertThat(e.sentence()).isNotBlank().hasSizeLessThan(260);
                assertThat(e.sentence().chars().noneMatch(Character::isISOControl))
                        .isTrue();
            }
        }
    }

    @Test
    void isNeverCutShortAndThenRead() {
        String farAway = "2" + " ".repeat(9_999) + "and 3 hours";
        for (Consumer<String> reader : READERS.subList(0, 18)) {
            assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> reader.accept(farAway));
        }
    }

    @Test
    void isCleanedOrRefusedAsText() {
        Tries.of(1000, draw -> cleanedOrRefused(Strange.text(draw)));
    }

    private static void cleanedOrRefused(String typed) {
        try {
            assertThat(Typed.line(typed, 120)).doesNotContain("\0", "\n", "  ").hasSizeLessThanOrEqualTo(240);
            assertThat(Typed.block(typed, 120)).doesNotContain("\0", "\r");
        } catch (Refused e) {
            assertThat(e.sentence()).isNotBlank();
        }
    }
}
