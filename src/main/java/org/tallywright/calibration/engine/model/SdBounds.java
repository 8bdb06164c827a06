package org.tallywright.calibration.engine.model;

/**
 * Bounds of the standard deviations, as ln sd in the response's units.
 *
 * @param lowestResidual lowest ln of the residual sd
 * @param lowest lowest ln of the other sds; one that sits there is reported as 0
 * @param highest highest of all
 */
public record SdBounds(double lowestResidual, double lowest, double highest) {

    public double lowest(int k) {
        return k == 0 ? lowestResidual : lowest;
    }

    double clamp(int k, double logSd) {
        return Math.max(lowest(k), Math.min(highest, logSd));
    }
}
