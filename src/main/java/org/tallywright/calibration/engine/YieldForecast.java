package org.tallywright.calibration.engine;

/**
 * The yield to expect of a material.
 *
 * @param yield net/bought, 0 to 1
 * @param observations purchases of this material behind it
 * @param startingShare how much of it is still the starting yield, 1 with no history
 */
public record YieldForecast(Distribution yield, int observations, double startingShare) {

    /** Quantity to buy for a net need, at the median yield. */
    public double toBuy(double net) {
        return net / yield.median();
    }

    /** Quantity to buy that is enough with the given probability, 0 to 1. */
    public double toBuy(double net, double probability) {
        return net / yield.quantile(1 - probability);
    }
}
