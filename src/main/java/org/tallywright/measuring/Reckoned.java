package org.tallywright.measuring;

/**
 * A computed figure with what the readings leave open about it.
 *
 * @param value inches, degrees or percent, as its name says
 * @param standard its standard uncertainty in the same unit
 */
public record Reckoned(double value, double standard) {
    /** Twice the standard uncertainty: about 19 in 20 for errors that add up from several small ones. */
    public double plusMinus() {
        return 2 * standard;
    }

    /** Whether the value differs from nothing by more than the readings explain. */
    public boolean isBeyondDoubt() {
        return Math.abs(value) > plusMinus();
    }
}
