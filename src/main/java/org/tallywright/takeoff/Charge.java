package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.math.MathContext;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.Quantity;

/**
 * What a material costs the job, in its own unit: what is bought, and what is taken from stock at its price. An offcut costs
 * nothing: the job that it is left from was charged for it.
 *
 * @param net in the finished work, out of what is charged
 * @param likely charged half the time at most
 * @param safe charged four times in five at most
 * @param covered of the need by offcuts, where how much is needed is chance
 * @param stock of the likely quantity, taken from stock
 * @param laidOut whether a layout gave it; else it is net / yield
 */
public record Charge(Quantity net, Quantity likely, Quantity safe, Quantity covered, Quantity stock, boolean laidOut) {
    public boolean isNothing() {
        return likely.isZero() && safe.isZero();
    }

    /**
     * Needed with the part that offcuts give taken off, then from stock what is there, the rest in whole purchase units.
     *
     * @param net of all parts
     */
    static Charge of(
            MaterialCard card,
            BigDecimal net,
            BigDecimal likely,
            BigDecimal safe,
            OwnedPieces.Owned owned,
            boolean laidOut) {
        BigDecimal some = likely.subtract(owned.offcutQuantity()).max(BigDecimal.ZERO);
        BigDecimal most = safe.subtract(owned.offcutQuantity()).max(BigDecimal.ZERO);
        BigDecimal share = likely.signum() == 0 ? BigDecimal.ZERO : some.divide(likely, MathContext.DECIMAL64);
        return new Charge(
                Quantity.of(net.multiply(share)),
                charged(some, owned.stock(), card),
                charged(most, owned.stock(), card),
                Quantity.of(owned.offcutQuantity()),
                Quantity.of(some.min(owned.stock())),
                laidOut);
    }

    private static Quantity charged(BigDecimal need, BigDecimal stock, MaterialCard card) {
        BigDecimal fromStock = need.min(stock);
        return Quantity.of(fromStock).plus(BuyLister.wholeSteps(need.subtract(fromStock), card.purchaseStep()));
    }
}
