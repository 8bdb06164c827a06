package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

class MaterialCostTest {
    /** The first row is the trade's classic: a yield of 0.70 means 143 to buy for 100, not 130. The others are invented. */
    @ParameterizedTest
    @CsvSource({
        "100, 0.70, 1, 1.00, 0, 143, 143.00",
        "92, 0.70, 1, 4.35, 0, 132, 574.20",
        "9.6, 0.82, 1, 109.09, 45.50, 12, 1354.58",
        "150, 1, 1, 0.34, 0, 150, 51.00",
        "0.31, 1, 0.1, 28.00, 0, 0.4, 11.20",
        "6.3, 0.9, 1, 0.3333, 0, 7, 2.33",
    })
    void buysWholeUnitsForTheNetQuantity(
            String net, String yield, String step, String price, String freight, String buys, String amount) {
        MaterialCost cost = new MaterialCost(
                NetQuantity.of(net), Yield.of(yield), Quantity.of(step), UnitPrice.of(price), Money.of(freight));

        assertThat(cost.purchase()).isEqualTo(Quantity.of(buys));
        assertThat(cost.amount()).isEqualTo(Money.of(amount));
    }
}
