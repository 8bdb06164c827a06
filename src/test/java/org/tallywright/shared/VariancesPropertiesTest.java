package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;

class VariancesPropertiesTest {
    @Test
    void partsAddUpToTheWholeDifference() {
        Tries.of(1000, draw -> {
            BigDecimal actual = upTo(draw, 100_000);
            BigDecimal paid = upTo(draw, 1000);
            BigDecimal estimated = upTo(draw, 100_000);
            BigDecimal planned = upTo(draw, 1000);
            BigDecimal parts =
                    Variances.price(actual, paid, planned).add(Variances.quantity(actual, estimated, planned));
            assertThat(parts).isEqualByComparingTo(actual.multiply(paid).subtract(estimated.multiply(planned)));
        });
    }

    private static BigDecimal upTo(Draw draw, long most) {
        int scale = draw.between(0, 6);
        return BigDecimal.valueOf(draw.between(0, most * (long) Math.pow(10, scale)), scale);
    }
}
