package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;

class VariancesPropertiesTest {
    @Property
    void partsAddUpToTheWholeDifference(
            @ForAll @BigRange(max = "100000") BigDecimal actual,
            @ForAll @BigRange(max = "1000") BigDecimal paid,
            @ForAll @BigRange(max = "100000") BigDecimal estimated,
            @ForAll @BigRange(max = "1000") BigDecimal planned) {
        BigDecimal parts = Variances.price(actual, paid, planned).add(Variances.quantity(actual, estimated, planned));
        assertThat(parts).isEqualByComparingTo(actual.multiply(paid).subtract(estimated.multiply(planned)));
    }
}
