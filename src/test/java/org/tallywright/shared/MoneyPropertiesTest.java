package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

class MoneyPropertiesTest {
    @Property
    void readsBackWhatItWrites(@ForAll @LongRange(min = -999_999_999_999L, max = 999_999_999_999L) long cents) {
        Money money = Money.ofCents(cents);
        assertThat(Money.of(MoneyFormat.DEFAULT.format(money))).isEqualTo(money);
        assertThat(Money.of(new MoneyFormat("\u20ac", false, ',', '.').format(money)))
                .isEqualTo(money);
        assertThat(Money.of(money.toString())).isEqualTo(money);
    }

    @Property
    void partsAddUpAndNoneIsACentOff(
            @ForAll @LongRange(min = -99_999_999_999L, max = 99_999_999_999L) long cents,
            @ForAll @Size(min = 1, max = 12) List<@IntRange(max = 1000) Integer> weights) {
        int[] w = weights.stream().mapToInt(Integer::intValue).toArray();
        long total = Arrays.stream(w).sum();
        Assume.that(total > 0);
        Money money = Money.ofCents(cents);

        List<Money> parts = money.allocate(w);

        assertThat(Money.sum(parts)).isEqualTo(money);
        for (int i = 0; i < w.length; i++) {
            BigDecimal off = parts.get(i)
                    .amount()
                    .multiply(BigDecimal.valueOf(total))
                    .subtract(money.amount().multiply(BigDecimal.valueOf(w[i])));
            assertThat(off.abs()).isLessThan(BigDecimal.valueOf(total).movePointLeft(2));
        }
    }
}
