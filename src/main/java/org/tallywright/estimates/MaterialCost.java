package org.tallywright.estimates;

import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/**
 * What one material costs a job: net quantity / yield, up to whole purchase units, at the dated price, plus freight.
 * Dividing by the yield is not the same as adding the waste: 100 net at a yield of 0.70 is 143 to buy, not 130.
 *
 * @param purchaseStep the smallest quantity that can be bought: 1 for whole units, 0.1 for tenths
 * @param laidOut what a layout gave instead; null for net / yield
 */
public record MaterialCost(
        NetQuantity net,
        Yield yield,
        Quantity purchaseStep,
        UnitPrice price,
        Money freight,
        @Nullable LaidOut laidOut) {

    /** Without a layout. */
    public MaterialCost(NetQuantity net, Yield yield, Quantity purchaseStep, UnitPrice price, Money freight) {
        this(net, yield, purchaseStep, price, freight, null);
    }

    public Quantity purchase() {
        return laidOut != null
                ? laidOut.likely()
                : net.grossAt(yield).wholeUnits(purchaseStep).times(purchaseStep.amount());
    }

    /** Purchase quantity x price, to the cent, and freight. */
    public Money amount() {
        return price.times(purchase()).plus(freight);
    }
}
