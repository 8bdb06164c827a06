package org.tallywright.calibration.engine;

/**
 * Choices of the base model.
 *
 * @param weightExponent likelihood weights grow with estimate^exponent, cut at their 95th percentile; 0.5, or 0 = off
 * @param slope whether the level may depend on ln(estimate)
 * @param halfLifeDays age at which a task counts half; infinite = never
 * @param integrateBelow with fewer tasks than this, forecasts are averaged over nine points of the sds
 * @param conditionTasks a site condition counts once this many tasks had it, and as many had not, in three jobs each
 */
public record BaseSettings(
        double weightExponent, boolean slope, double halfLifeDays, int integrateBelow, int conditionTasks) {

    public static BaseSettings standard() {
        return new BaseSettings(0.5, true, Double.POSITIVE_INFINITY, 300, 12);
    }

    /** Every task counts the same and the level does not depend on size. */
    public static BaseSettings plain() {
        return new BaseSettings(0, false, Double.POSITIVE_INFINITY, 300, 12);
    }

    public BaseSettings withWeightExponent(double exponent) {
        return new BaseSettings(exponent, slope, halfLifeDays, integrateBelow, conditionTasks);
    }

    public BaseSettings withHalfLife(double days) {
        return new BaseSettings(weightExponent, slope, days, integrateBelow, conditionTasks);
    }
}
