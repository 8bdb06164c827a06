package org.tallywright.estimates;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;

/**
 * A material line that follows the buy list.
 *
 * @param laidOut null: net / the catalogue's yield
 * @param stock of the purchase, taken from stock
 * @param paid what was last paid, for a material that the catalogue has no price of; null for never
 */
public record BuyListLine(
        UUID id,
        UUID material,
        NetQuantity net,
        @Nullable LaidOut laidOut,
        Quantity stock,
        @Nullable UnitPrice paid) {

    public BuyListLine at(UnitPrice lastPaid) {
        return new BuyListLine(id, material, net, laidOut, stock, lastPaid);
    }
}
