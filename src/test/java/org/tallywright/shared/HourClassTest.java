package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class HourClassTest {
    @Test
    void leavesReworkCallBacksAndStandbyOutOfTheRate() {
        assertThat(Arrays.stream(HourClass.values()).filter(c -> !c.countsInRate()))
                .containsExactly(HourClass.REWORK, HourClass.CALL_BACK, HourClass.STANDBY);
    }

    @Test
    void isReadHoweverItIsHyphenated() {
        assertThat(HourClass.of("Callback")).isEqualTo(HourClass.CALL_BACK);
        assertThat(HourClass.of("SET_UP")).isEqualTo(HourClass.SET_UP);
        assertThat(ShopAccount.of("Lost-bids")).isEqualTo(ShopAccount.LOST_BIDS);
        for (HourClass each : HourClass.values()) {
            assertThat(HourClass.of(each.code())).isEqualTo(each);
            assertThat(HourClass.of(each.label())).isEqualTo(each);
        }
        assertThatExceptionOfType(NotUnderstood.class).isThrownBy(() -> HourClass.of("lunch"));
    }
}
