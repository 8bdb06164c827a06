package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.tallywright.Tries;

class LengthPropertiesTest {
    private static final long LONGEST = 100 * Length.METRE;

    @Test
    void readsBackWhatItWritesInBothSystems() {
        Tries.of(1000, draw -> {
            Length length = new Length(draw.between(-LONGEST, LONGEST));
            for (Units shop : Units.values()) {
                for (Units written : Units.values()) {
                    assertThat(Length.parseSigned(length.format(written), shop)).isEqualTo(length);
                }
                assertThat(Length.parseSigned(length.formatInches(), shop)).isEqualTo(length);
            }
        });
    }

    @Test
    void readsBackEverySixtyFourth() {
        Tries.of(1000, draw -> {
            Length length = Length.ofSixtyFourths(draw.between(0L, 64 * 3900));
            assertThat(Length.parse(length.format(Units.IMPERIAL), Units.IMPERIAL))
                    .isEqualTo(length);
            assertThat(length.format(Units.IMPERIAL)).doesNotContain("\u2248");
        });
    }

    @Test
    void whatIsAddedCanBeTakenAway() {
        Tries.of(1000, draw -> {
            Length a = new Length(draw.between(0, LONGEST));
            Length b = new Length(draw.between(0, LONGEST));
            assertThat(a.plus(b).minus(b)).isEqualTo(a);
        });
    }
}
