package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class HoursPropertiesTest {
    @Test
    void readsBackWhatItWrites() {
        IntStream.rangeClosed(1, 1440)
                .forEach(minutes ->
                        assertThat(Hours.parse(new Hours(minutes).toString())).isEqualTo(new Hours(minutes)));
    }
}
