package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class HoursPropertiesTest {
    @Property
    void readsBackWhatItWrites(@ForAll @IntRange(min = 1, max = 1440) int minutes) {
        assertThat(Hours.parse(new Hours(minutes).toString())).isEqualTo(new Hours(minutes));
    }
}
