package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.Tries;

class MoneyPropertiesTest {
    @Test
    void readsBackWhatItWrites() {
        Tries.of(1000, draw -> {
            Money money = Money.ofCents(draw.between(-999_999_999_999L, 999_999_999_999L));
            assertThat(Money.of(MoneyFormat.DEFAULT.format(money))).isEqualTo(money);
            assertThat(Money.of(new MoneyFormat("\u20ac", false, ',', '.').format(money)))
                    .isEqualTo(money);
            assertThat(Money.of(money.toString())).isEqualTo(money);
        });
    }

    @Test
    void partsAddUpAndNoneIsACentOff() {
        Tries.of(1000, draw -> {
            Money money = Money.ofCents(draw.between(-99_999_999_999L, 99_999_999_999L));
            int[] weights = draw.list(1, 12, () -> draw.between(0, 1000)).stream()
                    .mapToInt(Integer::intValue)
                    .toArray();
            if (Arrays.stream(weights).sum() > 0) {
                addsUp(money, weights);
            }
        });
    }

    private static void addsUp(Money money, int[] weights) {
        long total = Arrays.stream(weights).sum();

        List<Money> parts = money.allocate(weights);

        assertThat(Money.sum(parts)).isEqualTo(money);
        for (int i = 0; i < weights.length; i++) {
            BigDecimal off = parts.get(i)
                    .amount()
                    .multiply(BigDecimal.valueOf(total))
                    .subtract(money.amount().multiply(BigDecimal.valueOf(weights[i])));
            assertThat(off.abs()).isLessThan(BigDecimal.valueOf(total).movePointLeft(2));
        }
    }
}
