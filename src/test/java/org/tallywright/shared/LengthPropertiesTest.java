package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

class LengthPropertiesTest {
    private static final long LONGEST = 100 * Length.METRE;

    @Property
    void readsBackWhatItWritesInBothSystems(@ForAll @LongRange(min = -LONGEST, max = LONGEST) long units) {
        Length length = new Length(units);
        for (Units shop : Units.values()) {
            for (Units written : Units.values()) {
                assertThat(Length.parseSigned(length.format(written), shop)).isEqualTo(length);
            }
            assertThat(Length.parseSigned(length.formatInches(), shop)).isEqualTo(length);
        }
    }

    @Property
    void readsBackEverySixtyFourth(@ForAll @LongRange(max = 64 * 3900) long sixtyFourths) {
        Length length = Length.ofSixtyFourths(sixtyFourths);
        assertThat(Length.parse(length.format(Units.IMPERIAL), Units.IMPERIAL)).isEqualTo(length);
        assertThat(length.format(Units.IMPERIAL)).doesNotContain("\u2248");
    }

    @Property
    void whatIsAddedCanBeTakenAway(@ForAll @LongRange(max = LONGEST) long a, @ForAll @LongRange(max = LONGEST) long b) {
        assertThat(new Length(a).plus(new Length(b)).minus(new Length(b))).isEqualTo(new Length(a));
    }
}
