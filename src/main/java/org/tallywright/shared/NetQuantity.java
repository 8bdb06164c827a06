package org.tallywright.shared;

/** What ends up in the finished work. */
public record NetQuantity(Quantity quantity) {
    public NetQuantity {
        if (quantity.isNegative()) {
            throw new NotUnderstood("A net quantity cannot be negative.");
        }
    }

    public static NetQuantity of(String typed) {
        return new NetQuantity(Quantity.of(typed));
    }

    /** What must be bought for it: net / yield. */
    public GrossQuantity grossAt(Yield yield) {
        return new GrossQuantity(yield.grossFor(quantity));
    }

    @Override
    public String toString() {
        return quantity.toString();
    }
}
