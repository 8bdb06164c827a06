package org.tallywright.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** What is bought, waste included. */
public record GrossQuantity(Quantity quantity) {
    public GrossQuantity {
        if (quantity.isNegative()) {
            throw new NotUnderstood("A gross quantity cannot be negative.");
        }
    }

    public static GrossQuantity of(String typed) {
        return new GrossQuantity(Quantity.of(typed));
    }

    /** What is left in the work of it: gross x yield. */
    public NetQuantity netAt(Yield yield) {
        return new NetQuantity(quantity.times(yield.amount()));
    }

    /** The number of whole purchase units that hold it, so much in each. */
    public Quantity wholeUnits(Quantity inEach) {
        if (inEach.amount().signum() <= 0) {
            throw new Refused("unit", "A purchase unit holds more than nothing.");
        }
        BigDecimal units = quantity.amount().divide(inEach.amount(), 0, RoundingMode.CEILING);
        return new Quantity(units);
    }

    /** The quantity to buy where the thing comes in whole units of one. */
    public Quantity wholeUnits() {
        return quantity.wholeUp();
    }

    @Override
    public String toString() {
        return quantity.toString();
    }
}
