package org.tallywright.calibration.engine;

import org.tallywright.calibration.engine.model.SdBounds;

/**
 * Choices of the base model.
 *
 * @param weightExponent likelihood weights grow with estimate^exponent, cut at their 95th percentile; 0.5, or 0 = off
 * @param slope whether the level may depend on ln(estimate)
 * @param halfLifeDays age at which a task counts half; infinite = never
 * @param integrateBelow with fewer tasks than this, forecasts are averaged over nine points of the sds
 * @param bounds of the sds; the residual stays at 0.05 or more, because nobody repeats a task within 5 %, copied numbers do
 * @param conditionTasks a site condition counts once this many tasks had it, and as many had not, in three jobs each
 */
public record BaseSettings(
        double weightExponent,
        boolean slope,
        double halfLifeDays,
        int integrateBelow,
        SdBounds bounds,
        int conditionTasks) {

    private static final SdBounds BOUNDS = new SdBounds(Math.log(0.05), -6, 3);

    public static BaseSettings standard() {
        return new BaseSettings(0.5, true, Double.POSITIVE_INFINITY, 300, BOUNDS, 12);
    }

    /** Every task counts the same, the level does not depend on size, and the residual sd may be small. */
    public static BaseSettings plain() {
        return new BaseSettings(0, false, Double.POSITIVE_INFINITY, 300, new SdBounds(-6, -6, 3), 12);
    }

    public BaseSettings withWeightExponent(double exponent) {
        return new BaseSettings(exponent, slope, halfLifeDays, integrateBelow, bounds, conditionTasks);
    }

    public BaseSettings withHalfLife(double days) {
        return new BaseSettings(weightExponent, slope, days, integrateBelow, bounds, conditionTasks);
    }
}
